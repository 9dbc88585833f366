// A shipped set written into boxes and read back is the same set: a copy judges as its original does.
import { describe, expect, it } from 'vitest'
import { allCriteria } from '@/lib/criteria/catalogue'
import { draftSchema } from '@/lib/criteria/draft/draft-schema'
import { readDraft } from '@/lib/criteria/draft/from-draft'
import { draftOf } from '@/lib/criteria/draft/to-draft'
import { copiedSourceProblems } from '@/lib/criteria/draft/copied-source'

describe.each(allCriteria().map((set) => [set.id, set] as const))('%s', (id, set) => {
  const draft = draftOf(set)
  const read = readDraft(draft, { id: 'own.copy', version: 1 })

  it('reads back with every limit as it was', () => {
    expect(read.ok ? read.value.rules : read.problems).toEqual(set.rules)
  })

  it('names the set it was copied from', () => {
    expect(read).toMatchObject({ ok: true, value: { id: 'own.copy', settings: { 'copied-from': id, 'copied-version': set.version } } })
  })

  it('is a draft that can be put away', () => {
    expect(draftSchema.parse(JSON.parse(JSON.stringify(draft)))).toEqual(draft)
  })

  it('owes no other source while nothing is changed', () => {
    if (!read.ok) throw new Error('unread')
    expect(copiedSourceProblems(draft, read.value, set)).toEqual({})
  })
})

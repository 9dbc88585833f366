// Whatever is typed into the boxes of a set, reading it gives a set or sentences at boxes, and never throws.
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { allCriteria } from '@/lib/criteria/catalogue'
import { draftSchema } from '@/lib/criteria/draft/draft-schema'
import { readDraft } from '@/lib/criteria/draft/from-draft'
import { draftOf } from '@/lib/criteria/draft/to-draft'
import { parseCriteriaSet } from '@/lib/criteria/schema'
import type { DraftCriteria } from '@/lib/criteria/draft/draft'

const typing = fc.oneof(fc.string({ maxLength: 12 }), fc.constantFrom('', ' ', '0', '-1', '1/0', '1/32', '1e9', '٣', '10 %', '∞', 'NaN', '1 1/8', '.5 mm'))
const KEPT = new Set(['kind', 'form', 'per', 'end', 'lowKind', 'highKind', 'weld', 'completePenetration', 'transverseToTension', 'stiffenerToWeb', 'of', 'by', 'plus', 'size', 'reading', 'side', 'answer', 'reason', 'status', 'readiness', 'system', 'ifSeen', 'base', 'key'])

/** The same draft with some of its boxes typed over. */
function typedOver(data: unknown, type: () => string | null): unknown {
  if (typeof data === 'string') return type() ?? data
  if (Array.isArray(data)) return data.map((each) => typedOver(each, type))
  if (typeof data !== 'object' || data === null) return data
  return Object.fromEntries(Object.entries(data).map(([name, value]) => [name, KEPT.has(name) ? value : typedOver(value, type)]))
}

it('reads any typing', { timeout: 20_000 }, () => {
  fc.assert(fc.property(fc.constantFrom(...allCriteria()), fc.array(fc.option(typing, { freq: 4 }), { minLength: 1, maxLength: 60 }), (set, texts) => {
    let at = 0
    const draft = draftSchema.parse(typedOver(draftOf(set), () => texts[at++ % texts.length] ?? null)) satisfies DraftCriteria
    const read = readDraft(draft, { id: 'own.any', version: 1 })
    if (read.ok) {
      expect(parseCriteriaSet(JSON.parse(JSON.stringify(read.value))).ok).toBe(true)
      return
    }
    expect(Object.keys(read.problems).length).toBeGreaterThan(0)
    for (const [box, sentence] of Object.entries(read.problems)) {
      expect(box).toMatch(/^(title|edition|passMark|rules(\.\d+(\.[a-zA-Z0-9]+)*)?)$/)
      expect(sentence).toMatch(/^.+\.$/s)
    }
  }), { numRuns: 60 })
})

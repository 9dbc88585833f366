import { describe, expect, it } from 'vitest'
import { readClassification } from '@/lib/consumables/classification'
import { checkBoothCard } from '@/lib/consumables/setup-checks'
import { allCriteria } from '@/lib/criteria/catalogue'
import { fromLibrary, LIBRARY } from '@/lib/course/library'
import { positionRows } from '@/lib/procedure/positions'
import { PROCESSES } from '@/lib/procedure/process'
import { boothCardSchema } from '@/lib/schemas/booth-card'

describe('the library of exercises', () => {
  it('holds at least 24, each under a key and a title of its own', () => {
    expect(LIBRARY.length).toBeGreaterThanOrEqual(24)
    expect(new Set(LIBRARY.map(({ key }) => key)).size).toBe(LIBRARY.length)
    expect(new Set(LIBRARY.map(({ facts }) => facts.title)).size).toBe(LIBRARY.length)
  })

  it('covers every process, every plate position and both progressions', () => {
    expect(new Set(LIBRARY.map(({ facts }) => facts.process))).toEqual(new Set(PROCESSES))
    expect([...new Set(LIBRARY.map(({ facts }) => facts.position))].sort()).toEqual(['1F', '1G', '2F', '2G', '3F', '3G', '4F', '4G'])
    expect(new Set(LIBRARY.map(({ facts }) => facts.progression))).toEqual(new Set(['up', 'down', null]))
  })

  it.each(LIBRARY.map((each) => [each.key, each.facts] as const))('%s passes the checks of a booth card without a warning', (_key, facts) => {
    expect(checkBoothCard(readClassification(facts.electrodeClass), facts, facts.boothCard)).toEqual([])
    expect(boothCardSchema.parse(facts.boothCard)).toEqual(facts.boothCard)
    expect(facts.boothCard.note).toMatch(/Starting point; tune to the wire maker’s sheet\.$/)
  })

  it.each(LIBRARY.map((each) => [each.key, each.facts] as const))('%s is welded in a position its wire is classified for', (_key, facts) => {
    const { positions, process } = readClassification(facts.electrodeClass)
    expect(process).toBe(facts.process)
    const welded = positionRows(facts.position, facts.progression).filter(({ product }) => product === 'plate').flatMap(({ welds }) => welds)
    if (positions !== null) expect(positions).toEqual(expect.arrayContaining(welded))
  })

  it('names criteria that are shipped', () => {
    const shipped = allCriteria().map(({ id, version }) => `${id} ${version}`)
    for (const { facts } of LIBRARY) expect(shipped).toContain(`${facts.criteria.id} ${facts.criteria.version}`)
  })

  it('answers nothing for a key it does not have', () => {
    expect(fromLibrary('smaw-2f-tee')?.facts.position).toBe('2F')
    expect(fromLibrary('none')).toBeUndefined()
  })
})

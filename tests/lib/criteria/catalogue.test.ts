import { describe, expect, it } from 'vitest'
import { allCriteria, criteriaById } from '@/lib/criteria/catalogue'
import { ISO9606_EXCEPTIONS, iso9606Set } from '@/lib/criteria/sets/iso9606'
import { scoreInspection } from '@/lib/scoring/score-inspection'
import { anInspection, aWeld, findingOf, stations } from '../scoring/sound-weld'

const sets = allCriteria()

it('has the built-in sets', () => {
  expect(sets.map((set) => set.id)).toEqual([
    'shop-bead', 'structural-static.us', 'structural-static.si', 'structural-cyclic.us', 'structural-cyclic.si',
    'qualification-visual.us', 'qualification-visual.si', 'iso5817-b', 'iso5817-c', 'iso5817-d', 'iso9606-1',
  ])
})

it('refuses an unknown id and names those there are', () => {
  expect(() => criteriaById('structural')).toThrow(RangeError)
  expect(() => criteriaById('structural')).toThrow('There are no criteria with the id "structural". The built-in sets are shop-bead, structural-static.us')
  expect(() => criteriaById('toString')).toThrow(RangeError)
})

it.each([
  ['shop-bead', 'width-in-band width-consistency leg-size leg-balance crack fusion crater undercut porosity restart cleaning'],
  ['structural-static.us', 'crack fusion crater convexity overlap leg-size undercut porosity-per-inch porosity-per-12-inches reinforcement'],
  ['structural-cyclic.si', 'crack fusion crater convexity overlap leg-size undercut porosity-per-inch porosity-per-12-inches porosity-frequency porosity-diameter reinforcement'],
  ['qualification-visual.us', 'crack fusion crater convexity overlap leg-size undercut reinforcement'],
  ['iso5817-c', '100 104 2017 2025 401 5011 502 503 506 510 512 517 5213 5214 601 602'],
])('%s judges its rules', (id, rules) => {
  const ids = criteriaById(id).rules.map((rule) => rule.id)
  for (const rule of rules.split(' ')) expect(ids).toContain(rule)
})

describe.each(sets.map((set) => [set.id, set] as const))('%s', (id, set) => {
  it('is data: it survives JSON whole', () => {
    expect(JSON.parse(JSON.stringify(set))).toEqual(set)
  })

  it('is frozen to the bottom', () => {
    const [rule] = set.rules
    if (rule === undefined) throw new Error(`${id} has no rules`)
    expect(() => Object.assign(rule, { weight: 99 })).toThrow(TypeError)
    expect(() => Object.assign(rule.source, { status: 'confirmed' })).toThrow(TypeError)
    expect(() => (set.rules as unknown[]).push(rule)).toThrow(TypeError)
  })

  it('cites every rule, and says of ours and of memory what they are', () => {
    for (const { source } of set.rules) {
      expect(source.title.length).toBeGreaterThan(5)
      if (source.status === 'common-practice') expect(source.note).toBeDefined()
      else expect(source.clause).not.toBeNull()
    }
  })

  it('says what the number of its system is in', () => {
    expect(set.system).toBe(id === 'shop-bead' || id.endsWith('.us') ? 'us' : 'si')
    expect(set.version).toBeGreaterThanOrEqual(1)
  })
})

it('says which limits are from memory', () => {
  const status = (id: string, rule: string) => criteriaById(id).rules.find((one) => one.id === rule)?.source.status
  expect(status('structural-static.us', 'undercut')).toBe('confirmed')
  expect(status('structural-cyclic.us', 'undercut')).toBe('secondary')
  expect(status('structural-static.us', 'convexity')).toBe('memory')
  expect(status('iso5817-d', '506')).toBe('memory')
  expect(status('shop-bead', 'width-in-band')).toBe('common-practice')
})

describe('the ISO 9606-1 set', () => {
  // Convexity on an 8.7 mm face: level B allows 1.87 mm, level C 2.305 mm.
  const convex = anInspection({ stations: stations({ convexityMm: 2 }) })
  // Undercut on a 9.525 mm plate: level B allows 0.476 mm, level C 0.5 mm.
  const undercut = anInspection({ indications: [{ kind: 'undercut', atMm: 9, lengthMm: 4, depthMm: 0.49, toe: 'A' }] })
  const verdict = (set: ReturnType<typeof iso9606Set>, inspection: typeof convex, rule: string) => findingOf(scoreInspection(aWeld(), inspection, set), rule).verdict

  it('judges the four stricter exceptions at level C and all else at level B', () => {
    expect(ISO9606_EXCEPTIONS).toEqual(['502', '503', '5214', '504'])
    expect(verdict(criteriaById('iso9606-1'), convex, '503')).toBe('accept')
    expect(verdict(criteriaById('iso5817-b'), convex, '503')).toBe('reject')
    expect(verdict(criteriaById('iso9606-1'), undercut, '5011')).toBe('reject')
  })

  it('takes another list, such as one with undercut, and keeps it with the set', () => {
    const set = iso9606Set(['501'])
    expect(verdict(set, undercut, '5011')).toBe('accept')
    expect(verdict(set, convex, '503')).toBe('reject')
    expect(set.settings).toEqual({ judgedAtC: ['501'] })
  })

  it('refuses an item that is not in the table', () => {
    expect(() => iso9606Set(['999'])).toThrow(RangeError)
    expect(() => iso9606Set(['999'])).toThrow('"999" is not an item number that can be judged at level C')
  })
})

import { describe, expect, it } from 'vitest'
import { criteriaById } from '@/lib/criteria/catalogue'
import type { CriteriaSet } from '@/lib/criteria/types'
import { scoreInspection } from '@/lib/scoring/score-inspection'
import { SCORING_VERSION } from '@/lib/scoring/version'
import type { Indication, Inspection, Station, Weld } from '@/lib/scoring/types'
import { anInspection, aWeld, findingOf, stations } from './sound-weld'

const judge = (set: string, weld: Partial<Weld>, inspection: Partial<Inspection>) => scoreInspection(aWeld(weld), anInspection(inspection), criteriaById(set))
const undercut = (change: Partial<Indication>): Indication => ({ kind: 'undercut', atMm: 10, lengthMm: 100, depthMm: 0.9, toe: 'B', ...change })
const legs = (at: readonly (readonly [atMm: number, leg: number])[]): readonly Station[] => at.map(([atMm, leg]) => ({ atMm, legAMm: leg, legBMm: leg + 1 }))

it('accepts a sound weld and says under which criteria and which version of judging', () => {
  for (const id of ['shop-bead', 'structural-static.us', 'structural-static.si', 'structural-cyclic.us', 'qualification-visual.si', 'iso5817-b', 'iso5817-c', 'iso5817-d']) {
    const card = judge(id, {}, {})
    expect([card.verdict, card.criteriaId, card.scoringVersion]).toEqual(['accept', id, SCORING_VERSION])
  }
})

describe('1/32 in and 1 mm are different limits:', () => {
  it.each(['structural-static', 'structural-cyclic', 'qualification-visual'])('0.9 mm of undercut under %s', (family) => {
    const at = (system: string) => findingOf(judge(`${family}.${system}`, {}, { indications: [undercut({})] }), 'undercut').verdict
    expect([at('si'), at('us')]).toEqual(['accept', 'reject'])
  })
})

describe('undercut', () => {
  it('shows the sustained depth, the length used and the toe when length rejects', () => {
    expect(findingOf(judge('structural-static.us', { lengthMm: 600 }, { stations: stations(), indications: [undercut({})] }), 'undercut')).toMatchObject({
      verdict: 'reject', measured: 0.9, limit: { min: null, max: 0.79375 }, unit: 'mm', toe: 'B',
      extent: { measuredMm: 100, maxMm: 50.8, windowMm: 304.8 },
    })
  })

  it('shows the depth against 1/16 in while the length is allowed', () => {
    const finding = findingOf(judge('structural-static.us', {}, { indications: [undercut({ lengthMm: 40 })] }), 'undercut')
    expect(finding).toMatchObject({ verdict: 'accept', measured: 0.9, limit: { max: 1.5875 }, where: { fromMm: 10, toMm: 50 }, extent: { measuredMm: 40 } })
    expect(finding.margin).toBeCloseTo(0.6875, 9)
  })

  it('is clipped to the weld’s end', () => {
    const at = (lengthMm: number) => findingOf(judge('structural-static.us', {}, { indications: [undercut({ atMm: 260, lengthMm })] }), 'undercut')
    expect(at(40).extent?.measuredMm).toBe(40)
    expect(at(400)).toMatchObject({ verdict: 'accept', extent: { measuredMm: 40 }, where: { fromMm: 260, toMm: 300 } })
  })

  it('points at the window that holds most of it', () => {
    const runs = [undercut({ atMm: 0, lengthMm: 40 }), undercut({ atMm: 500, lengthMm: 30 }), undercut({ atMm: 560, lengthMm: 30 })]
    const finding = findingOf(judge('structural-static.us', { lengthMm: 900 }, { indications: runs }), 'undercut')
    expect(finding).toMatchObject({ verdict: 'reject', extent: { measuredMm: 60 }, toe: 'B' })
    expect(finding.where?.fromMm).toBeLessThanOrEqual(500)
    expect(finding.where?.toMm).toBeGreaterThanOrEqual(590)
  })

  it('names no toe when it is on both', () => {
    const runs = [undercut({ toe: 'A' }), undercut({ toe: 'B' })]
    expect(findingOf(judge('structural-static.us', {}, { indications: runs }), 'undercut').toe).toBeUndefined()
  })
})

describe('structural legs', () => {
  const weld = { nominalLegMm: 8, lengthMm: 200 }

  it('shows the shortest leg against nominal less the shortfall when it is far too short', () => {
    const finding = findingOf(judge('structural-static.si', weld, { stations: legs([[90, 9], [100, 4], [110, 9]]) }), 'leg-size')
    expect(finding).toMatchObject({ verdict: 'reject', measured: 4, limit: { min: 5, max: null }, margin: -1, where: { fromMm: 95, toMm: 105 } })
  })

  it('shows the sustained leg against nominal when too much of the length is short', () => {
    const finding = findingOf(judge('structural-static.si', weld, { stations: legs([[50, 7], [100, 9], [150, 9]]) }), 'leg-size')
    expect(finding).toMatchObject({ verdict: 'reject', measured: 7, limit: { min: 8, max: null }, margin: -1, extent: { measuredMm: 75, maxMm: 20, windowMm: 200 } })
  })

  it('counts stations at one place once, by the shorter', () => {
    const places = legs([[10, 8], [100, 8], [100, 7.5], [110, 8], [190, 8]])
    expect(findingOf(judge('structural-static.si', weld, { stations: places }), 'leg-size').extent?.measuredMm).toBe(50)
  })
})

it('adds up pores in the worst inch and shows where they lie', () => {
  const pores = [10, 50, 60, 70, 120].map((atMm): Indication => ({ kind: 'pore', atMm, diameterMm: 4 }))
  expect(findingOf(judge('structural-static.si', {}, { indications: pores }), 'porosity-per-inch')).toMatchObject({
    verdict: 'reject', measured: 12, limit: { max: 10 }, margin: -2, where: { fromMm: 50, toMm: 70 },
  })
})

it('counts faults, and shows the first of them', () => {
  const found: readonly Indication[] = [{ kind: 'spatter', atMm: 90 }, { kind: 'slag', atMm: 40, lengthMm: 10 }, { kind: 'spatter', atMm: 60 }]
  expect(findingOf(judge('shop-bead', {}, { indications: found }), 'cleaning')).toMatchObject({
    verdict: 'reject', measured: 3, limit: { min: null, max: 0 }, unit: 'count', margin: -3, where: { fromMm: 40, toMm: 50 },
  })
})

it('names the first of equally bad stations', () => {
  const wide = [{ atMm: 200, widthMm: 12 }, { atMm: 40, widthMm: 12 }]
  expect(findingOf(judge('shop-bead', {}, { stations: wide }), 'width-in-band').where).toEqual({ fromMm: 40, toMm: 40 })
})

describe('a close call', () => {
  const width = (widthMm: number, gaugeResolutionMm: number) =>
    findingOf(judge('shop-bead', {}, { stations: stations({ widthMm }), gaugeResolutionMm }), 'width-in-band').closeCall

  it('is a reading within the gauge’s step of its limit, on either side', () => {
    // The band of 1/16 in wire is 7.9375 to 9.525 mm.
    expect([width(8.3, 0.4), width(8.4, 0.4), width(7.6, 0.4), width(7.5, 0.4), width(9.525, 0)]).toEqual([true, false, true, false, true])
  })

  it('is not said of a gauge whose step is not known, of what was not seen, or of a count', () => {
    const card = judge('iso5817-c', { thicknessMm: 2 }, { gaugeResolutionMm: 1 })
    expect(findingOf(card, '5011').closeCall).toBe(false)
    expect(findingOf(card, '100').closeCall).toBe(false)
    expect(findingOf(scoreInspection(aWeld(), anInspection(), criteriaById('shop-bead')), 'width-in-band').closeCall).toBe(false)
  })
})

describe('the standard margin', () => {
  it('is the margin over the rule’s scale, and absent for yes/no rules', () => {
    const card = judge('shop-bead', {}, { indications: [undercut({ depthMm: 0.5 })] })
    const finding = findingOf(card, 'undercut')
    const rule = criteriaById('shop-bead').rules.find((one) => one.id === 'undercut')
    if (rule?.readiness.as !== 'margin' || finding.margin === null) throw new Error('undercut has a margin')
    expect(finding.standardMargin).toBeCloseTo(finding.margin / rule.readiness.scale, 12)
    expect(findingOf(card, 'crack')).not.toHaveProperty('standardMargin')
  })
})

describe('a share of the length', () => {
  const set: CriteriaSet = {
    ...criteriaById('shop-bead'), id: 'own',
    rules: [{
      id: 'spatter', kind: 'length-share', of: ['spatter', 'slag'], max: 0.25, weight: 1, readiness: { as: 'attribute' },
      source: { title: 'Our rule', clause: null, status: 'common-practice' },
    }],
  }
  const share = (...indications: Indication[]) => findingOf(scoreInspection(aWeld(), anInspection({ indications }), set), 'spatter')

  it('is judged on both sides of its limit', () => {
    expect(share({ kind: 'spatter', atMm: 0, lengthMm: 50 }, { kind: 'slag', atMm: 275, lengthMm: 60 })).toMatchObject({ verdict: 'accept', measured: 0.25, margin: 0, unit: 'ratio' })
    expect(share({ kind: 'spatter', atMm: 0, lengthMm: 76 })).toMatchObject({ verdict: 'reject', where: { fromMm: 0, toMm: 76 } })
  })

  it('needs lengths, and to be looked for', () => {
    expect(share({ kind: 'slag', atMm: 3 })).toMatchObject({ verdict: 'not-measured', reason: 'indication-without-length' })
    const unseen = scoreInspection(aWeld(), anInspection({ lookedFor: ['slag'] }), set)
    expect(findingOf(unseen, 'spatter').reason).toBe('not-looked-for')
  })
})

import { describe, expect, it } from 'vitest'
import { criteriaById } from '@/lib/criteria/catalogue'
import type { Rule } from '@/lib/criteria/types'
import { scoreInspection } from '@/lib/scoring/score-inspection'
import { INDICATION_KINDS, type Inspection, type Station, type Weld } from '@/lib/scoring/types'
import { anInspection, aWeld, findingOf, stations, without } from './sound-weld'

const judge = (set: string, weld: Partial<Weld>, inspection: Partial<Inspection>) => scoreInspection(aWeld(weld), anInspection(inspection), criteriaById(set))

/** The second of five stations lacks some readings. */
const gap = (...fields: readonly (keyof Station)[]): Partial<Inspection> => ({
  stations: stations().map((station, index) => (index === 1 ? without(station, ...fields) : station)),
})
const notLookedFor = (kind: string): Partial<Inspection> => ({ lookedFor: INDICATION_KINDS.filter((one) => one !== kind) })
const groove: Partial<Weld> = { type: 'groove', nominalLegMm: null }
const noThickness = { thicknessMm: null as unknown as number }

describe('a rule is not measured, and the verdict incomplete, when', () => {
  it.each<[what: string, set: string, rule: string, reason: string, weld: Partial<Weld>, inspection: Partial<Inspection>]>([
    ['the electrode’s diameter is not known', 'shop-bead', 'width-in-band', 'no-electrode-diameter', { electrodeDiameterMm: null }, {}],
    ['no station was read', 'shop-bead', 'width-in-band', 'no-stations', {}, { stations: [] }],
    ['a station has no width', 'shop-bead', 'width-in-band', 'station-without-width', {}, gap('widthMm')],
    ['a station has no width to compare', 'shop-bead', 'width-consistency', 'station-without-width', {}, gap('widthMm')],
    ['there is one station, which is even with itself', 'shop-bead', 'width-consistency', 'one-station', {}, { stations: stations().slice(0, 1) }],
    ['no station was read to compare', 'shop-bead', 'width-consistency', 'no-stations', {}, { stations: [] }],
    ['a station has one leg', 'shop-bead', 'leg-size', 'station-without-legs', {}, gap('legBMm')],
    ['a station has one leg to balance', 'shop-bead', 'leg-balance', 'station-without-legs', {}, gap('legAMm')],
    ['no leg was asked for', 'shop-bead', 'leg-size', 'no-nominal-leg', { nominalLegMm: null }, {}],
    ['nobody looked for cracks', 'shop-bead', 'crack', 'not-looked-for', {}, notLookedFor('crack')],
    ['nobody looked for crater cracks', 'shop-bead', 'crack', 'not-looked-for', {}, notLookedFor('crater-crack')],
    ['nobody said whether fusion is complete', 'shop-bead', 'fusion', 'no-answer', {}, { fusionComplete: null }],
    ['nobody said whether the craters are filled', 'shop-bead', 'crater', 'no-answer', {}, { cratersFilled: null }],
    ['nobody looked for undercut', 'shop-bead', 'undercut', 'not-looked-for', {}, notLookedFor('undercut')],
    ['an undercut has no depth', 'shop-bead', 'undercut', 'indication-without-depth', {}, { indications: [{ kind: 'undercut', atMm: 5, lengthMm: 5 }] }],
    ['nobody looked for spatter', 'shop-bead', 'cleaning', 'not-looked-for', {}, notLookedFor('spatter')],
    ['a station has no legs', 'structural-static.us', 'leg-size', 'station-without-legs', {}, gap('legAMm', 'legBMm')],
    ['no station was read for legs', 'structural-static.us', 'leg-size', 'no-stations', {}, { stations: [] }],
    ['no leg was specified', 'structural-static.us', 'leg-size', 'no-nominal-leg', { nominalLegMm: null }, {}],
    ['a station has no convexity', 'structural-static.us', 'convexity', 'station-without-convexity', {}, gap('convexityMm')],
    ['a station has no width to hold its convexity against', 'structural-static.us', 'convexity', 'station-without-width', {}, gap('widthMm')],
    ['nobody looked for undercut on a structure', 'structural-static.us', 'undercut', 'not-looked-for', {}, notLookedFor('undercut')],
    ['an undercut on a structure has no depth', 'structural-static.us', 'undercut', 'indication-without-depth', {}, { indications: [{ kind: 'undercut', atMm: 5, lengthMm: 5 }] }],
    ['an undercut deeper than 1/32 in has no length', 'structural-static.us', 'undercut', 'indication-without-length', {}, { indications: [{ kind: 'undercut', atMm: 5, depthMm: 1 }] }],
    ['the plate’s thickness is not known', 'structural-static.us', 'undercut', 'no-thickness', noThickness, {}],
    ['a pore has no diameter', 'structural-static.us', 'porosity-per-inch', 'indication-without-diameter', {}, { indications: [{ kind: 'pore', atMm: 5 }] }],
    ['nobody looked for pores', 'structural-static.us', 'porosity-per-12-inches', 'not-looked-for', {}, notLookedFor('pore')],
    ['nobody looked for pores to count', 'structural-cyclic.si', 'porosity-frequency', 'not-looked-for', {}, notLookedFor('pore')],
    ['a pore’s diameter is limited and it has none', 'structural-cyclic.si', 'porosity-diameter', 'indication-without-diameter', {}, { indications: [{ kind: 'pore', atMm: 5 }] }],
    ['a station has no reinforcement', 'qualification-visual.us', 'reinforcement', 'station-without-reinforcement', groove, gap('reinforcementMm')],
    ['a groove’s thickness is not known', 'structural-static.us', 'reinforcement', 'no-thickness', { ...groove, ...noThickness }, {}],
    ['a station has no throat', 'iso5817-c', '5213', 'station-without-throat', {}, gap('throatMm')],
    ['a station has no throat to be thick', 'iso5817-c', '5214', 'station-without-throat', {}, gap('throatMm')],
    ['no leg was specified to take the throat from', 'iso5817-c', '5213', 'no-nominal-leg', { nominalLegMm: null }, {}],
    ['no leg was specified to judge balance by', 'iso5817-c', '512', 'no-nominal-leg', { nominalLegMm: null }, {}],
    ['no leg was specified to judge pores by', 'iso5817-d', '2017', 'no-nominal-leg', { nominalLegMm: null }, {}],
    ['a groove’s thickness is not known to judge pores by', 'iso5817-d', '2017', 'no-thickness', { ...groove, ...noThickness }, {}],
    ['a crater pipe has no size', 'iso5817-d', '2025', 'indication-without-size', {}, { indications: [{ kind: 'crater-pipe', atMm: 5 }] }],
    ['an overlap has no size', 'iso5817-d', '506', 'indication-without-size', {}, { indications: [{ kind: 'overlap', atMm: 5 }] }],
    ['misalignment was recorded at some stations', 'iso5817-b', '507', 'station-without-misalignment', groove, { stations: [{ atMm: 5, misalignmentMm: 0 }, { atMm: 9 }] }],
    ['underfill was recorded at some stations', 'iso5817-c', '511', 'station-without-underfill', groove, { stations: [{ atMm: 5, underfillMm: 0 }, { atMm: 9 }] }],
    ['root concavity was recorded at some stations', 'iso5817-c', '515', 'station-without-root-concavity', groove, { stations: [{ atMm: 5, rootConcavityMm: 0 }, { atMm: 9 }] }],
    ['a shrinkage groove was recorded at some stations', 'iso5817-c', '5013', 'station-without-shrinkage-groove', groove, { stations: [{ atMm: 5, shrinkageGrooveMm: 0 }, { atMm: 9 }] }],
    ['the root’s reach was recorded at some stations', 'iso5817-b', '4021', 'station-without-root-shortfall', groove, { stations: [{ atMm: 5, rootShortfallMm: 0 }, { atMm: 9 }] }],
    ['root pores were recorded at some stations', 'iso5817-b', '516', 'station-without-root-pore', groove, { stations: [{ atMm: 5, rootPoreMm: 0 }, { atMm: 9 }] }],
    ['the gap was recorded at some stations', 'iso5817-b', '617', 'station-without-root-gap', {}, { stations: [{ atMm: 5, rootGapMm: 0 }, { atMm: 9 }] }],
    ['the toe angle was recorded at some stations', 'iso5817-b', '505', 'station-without-toe-angle', {}, { stations: [{ atMm: 5, toeAngleDeg: 150 }, { atMm: 9 }] }],
    ['penetration was recorded without the root’s width', 'iso5817-b', '504', 'station-without-root-width', groove, { stations: [{ atMm: 5, penetrationMm: 1 }] }],
    ['no leg was specified to judge a gap by', 'iso5817-b', '617', 'no-nominal-leg', { nominalLegMm: null }, { stations: [{ atMm: 5, rootGapMm: 1 }] }],
    ['overlap has a size and no width to hold it against', 'iso5817-d', '506', 'station-without-width', {}, { ...gap(), stations: [{ atMm: 5 }], indications: [{ kind: 'overlap', atMm: 5, heightMm: 0.1 }] }],
    ['overlap was not looked for, nor the width read', 'iso5817-d', '506', 'station-without-width', {}, { ...notLookedFor('overlap'), stations: [{ atMm: 5 }] }],
    ['melt-through was recorded at some stations', 'qualification-visual.si', 'melt-through', 'station-without-penetration', groove, { stations: [{ atMm: 5, penetrationMm: 0 }, { atMm: 9 }] }],
  ])('%s', (_, set, rule, reason, weld, inspection) => {
    const card = judge(set, weld, inspection)
    expect(findingOf(card, rule)).toMatchObject({ verdict: 'not-measured', measured: null, margin: null, closeCall: false, reason })
    expect(card.verdict).not.toBe('accept')
  })

  it('says at which station', () => {
    expect(findingOf(judge('shop-bead', {}, gap('widthMm')), 'width-in-band').where).toEqual({ fromMm: 90, toMm: 90 })
  })

  it('reads null as not measured, as stored documents write it', () => {
    const station = { atMm: 10, widthMm: null } as unknown as Station
    expect(findingOf(judge('shop-bead', {}, { stations: [station] }), 'width-in-band').reason).toBe('station-without-width')
  })
})

describe('what was seen rejects, whatever was not measured:', () => {
  it.each<[what: string, set: string, rule: string, weld: Partial<Weld>, inspection: Partial<Inspection>]>([
    ['a crack nobody looked for', 'shop-bead', 'crack', {}, { lookedFor: [], indications: [{ kind: 'crack', atMm: 5 }] }],
    ['lack of fusion where nobody answered', 'shop-bead', 'fusion', {}, { fusionComplete: null, lookedFor: [], indications: [{ kind: 'lack-of-fusion', atMm: 5 }] }],
    ['a crater that is not filled', 'shop-bead', 'crater', {}, { cratersFilled: false, lookedFor: [] }],
    ['a width out of the band beside one not read', 'shop-bead', 'width-in-band', {}, { stations: [{ atMm: 5, widthMm: 12 }, { atMm: 9 }] }],
    ['widths far apart beside one not read', 'shop-bead', 'width-consistency', {}, { stations: [{ atMm: 5, widthMm: 12 }, { atMm: 7, widthMm: 8 }, { atMm: 9 }] }],
    ['one leg too short, the other not read', 'shop-bead', 'leg-size', {}, { stations: [{ atMm: 5, legBMm: 6 }] }],
    ['one leg far too short, the other not read', 'structural-static.us', 'leg-size', {}, { stations: [{ atMm: 5, legAMm: 3 }, { atMm: 290 }] }],
    ['legs short over more than a tenth, elsewhere not read', 'structural-static.us', 'leg-size', {}, { stations: [{ atMm: 5, legAMm: 6, legBMm: 7 }, { atMm: 100 }, { atMm: 290 }] }],
    ['deep undercut beside one of no depth', 'structural-static.us', 'undercut', {}, { lookedFor: [], indications: [{ kind: 'undercut', atMm: 5, depthMm: 2 }, { kind: 'undercut', atMm: 9 }] }],
    ['large pores beside one of no size', 'structural-static.us', 'porosity-per-inch', {}, { indications: [{ kind: 'pore', atMm: 5, diameterMm: 10 }, { kind: 'pore', atMm: 9 }] }],
    ['convexity over every limit, with no width', 'structural-static.us', 'convexity', {}, { stations: [{ atMm: 5, convexityMm: 5 }] }],
    ['undercut too deep for any plate', 'structural-static.us', 'undercut', noThickness, { indications: [{ kind: 'undercut', atMm: 5, lengthMm: 1, depthMm: 1.7 }] }],
    ['a pore too large for any leg', 'iso5817-c', '2017', { nominalLegMm: null }, { indications: [{ kind: 'pore', atMm: 5, diameterMm: 2.1 }] }],
    ['a pipe too large for any plate', 'iso5817-c', '2025', noThickness, { indications: [{ kind: 'crater-pipe', atMm: 5, depthMm: 1.1 }] }],
  ])('%s', (_, set, rule, weld, inspection) => {
    const card = judge(set, weld, inspection)
    expect(findingOf(card, rule).verdict).toBe('reject')
    expect(card.verdict).toBe('reject')
  })
})

describe('a question answered outright settles its rule:', () => {
  it.each(['shop-bead', 'structural-static.us', 'structural-cyclic.si', 'qualification-visual.us'])('%s asks for nothing beside the answer', (set) => {
    for (const [rule, kind] of [['fusion', 'lack-of-fusion'], ['crater', 'crater-pipe']] as const) {
      expect(findingOf(judge(set, {}, notLookedFor(kind)), rule).verdict).toBe('accept')
      expect(findingOf(judge(set, {}, { ...notLookedFor(kind), indications: [{ kind, atMm: 5 }] }), rule).verdict).toBe('reject')
    }
  })
})

describe('looked for and not seen is accepted, though nobody read the width its limit hangs on:', () => {
  const ofWidth = { form: 'linear', of: 'width', k: 0.2, c: 0, cap: null } as const
  const common = { id: 'own', source: { title: 'Made up', clause: null, status: 'common-practice' }, weight: 1, readiness: { as: 'margin', scale: 1 } } as const
  const rules: readonly Rule[] = [
    { ...common, kind: 'largest-size', of: ['overlap'], size: 'largest', max: ofWidth },
    { ...common, kind: 'size-allowance', of: ['overlap'], size: 'height', max: null, allowed: { max: ofWidth, over: { per: 'weld', share: 0.1 } } },
    { ...common, kind: 'window-sum', of: ['overlap'], size: 'height', countFromMm: 0, windowMm: 100, max: ofWidth },
  ]
  const bare = { stations: [{ atMm: 5 }] }

  it.each(rules.map((rule) => [rule.kind, rule] as const))('%s', (_, rule) => {
    const set = { ...criteriaById('iso5817-d'), rules: [rule] }
    const own = (weld: Partial<Weld>, inspection: Partial<Inspection>) => findingOf(scoreInspection(aWeld(weld), anInspection(inspection), set), 'own')
    expect(own({}, bare)).toMatchObject({ verdict: 'accept', measured: 0, margin: null, closeCall: false, where: null })
    expect(own({}, { ...bare, ...notLookedFor('overlap') }).verdict).toBe('not-measured')
    expect(own({}, { ...bare, indications: [{ kind: 'overlap', atMm: 5, lengthMm: 1, heightMm: 0.1 }] })).toMatchObject({ verdict: 'not-measured', reason: 'station-without-width' })
    expect(own({}, {})).toMatchObject({ verdict: 'accept', margin: expect.any(Number) as number })
  })

  it('a fact of the weld is another matter: without the thickness the rule stays open', () => {
    expect(findingOf(judge('iso5817-d', noThickness, {}), '2025')).toMatchObject({ verdict: 'not-measured', reason: 'no-thickness' })
  })

  it('level D asks for no width on a weld without overlap', () => {
    const card = judge('iso5817-d', groove, { stations: stations().map((station) => without(station, 'widthMm', 'reinforcementMm')) })
    expect(findingOf(card, '506').verdict).toBe('accept')
  })
})

describe('what was seen does not stand for what was not:', () => {
  it('a shallow undercut does not make up for not looking for undercut', () => {
    const card = judge('shop-bead', {}, { ...notLookedFor('undercut'), indications: [{ kind: 'undercut', atMm: 5, lengthMm: 2, depthMm: 0.2 }] })
    expect(findingOf(card, 'undercut')).toMatchObject({ verdict: 'not-measured', reason: 'not-looked-for' })
  })

  it('one good leg does not make up for the other', () => {
    expect(findingOf(judge('structural-static.us', {}, gap('legBMm')), 'leg-size').verdict).toBe('not-measured')
  })

  it('an undercut within the everyday limit needs no length', () => {
    const card = judge('structural-static.us', {}, { indications: [{ kind: 'undercut', atMm: 5, depthMm: 0.7 }] })
    expect(findingOf(card, 'undercut').verdict).toBe('accept')
  })

  it('a thickness that only one of two rules needs does not stop a plate both accept from being looked at again', () => {
    expect(findingOf(judge('iso5817-c', noThickness, {}), '5011')).toMatchObject({ verdict: 'not-measured', reason: 'no-thickness' })
  })
})

describe('a rule does not apply', () => {
  it.each<[set: string, rule: string, reason: string, weld: Partial<Weld>]>([
    ['structural-static.us', 'leg-size', 'fillet-only', groove],
    ['structural-static.us', 'reinforcement', 'groove-only', {}],
    ['structural-cyclic.us', 'porosity-frequency', 'other-service', { stiffenerToWeb: true }],
    ['structural-cyclic.us', 'porosity-per-inch', 'other-service', {}],
    ['iso5817-d', '517', 'permitted', {}],
    ['iso5817-b', '602', 'depends-on-application', {}],
    ['iso5817-b', '511', 'not-recorded', groove],
    ['iso5817-b', '504', 'not-recorded', groove],
    ['iso5817-b', '505', 'not-recorded', {}],
    ['iso5817-d', '516', 'permitted', groove],
    ['iso5817-b', '617', 'other-thickness', { thicknessMm: 3 }],
  ])('%s %s: %s', (set, rule, reason, weld) => {
    expect(findingOf(judge(set, weld, {}), rule)).toMatchObject({ verdict: 'not-applicable', reason, margin: null })
  })
})

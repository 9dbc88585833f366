import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { CAUSES } from '@/lib/coaching/causes'
import { whatToChange, type Advice, type CoachingInput } from '@/lib/coaching/what-to-change'
import { criteriaById } from '@/lib/criteria/catalogue'
import type { BoothCard, PassSettings } from '@/lib/procedure/booth-card'
import { scoreInspection } from '@/lib/scoring/score-inspection'
import { INDICATION_KINDS, type Inspection, type Station, type Weld } from '@/lib/scoring/types'

const weld: Weld = { type: 'fillet', process: 'FCAW-S', position: '2F', progression: null, thicknessMm: 12.7, electrodeDiameterMm: 1.6, nominalLegMm: 8, lengthMm: 200 }
const vertical: Weld = { ...weld, position: '3F', progression: 'up' }
const station = (atMm: number, more: Partial<Station> = {}): Station => ({ atMm, widthMm: 9, legAMm: 8.5, legBMm: 8.5, throatMm: 6, convexityMm: 1, reinforcementMm: 1, ...more })
const clean: Inspection = { stations: [station(30), station(100), station(170)], indications: [], lookedFor: [...INDICATION_KINDS], cratersFilled: true, fusionComplete: true, gaugeResolutionMm: 0.5 }
const widths = (a: number, b: number, c: number): Inspection => ({ ...clean, stations: [station(30, { widthMm: a }), station(100, { widthMm: b }), station(170, { widthMm: c })] })
const pores = (...places: number[]): Inspection => ({ ...clean, indications: places.map(atMm => ({ kind: 'pore' as const, atMm, diameterMm: 2 })) })
const undercut = (...toes: ('A' | 'B')[]): Inspection => ({ ...clean, indications: toes.map((toe, i) => ({ kind: 'undercut' as const, atMm: 40 + 60 * i, lengthMm: 40, depthMm: 1.5, toe })) })

const card: BoothCard = {
  polarity: 'DCEN', amps: null, volts: { min: 19, max: 21 }, wireFeedMmPerS: { min: 60, max: 70 }, contactTipToWorkMm: { min: 19, max: 25 },
  travelSpeedMmPerS: { min: 3, max: 4 }, gas: null, gasFlowLPerMin: null, workAngleDeg: null, travelAngleDeg: null, travelDirection: 'drag', sidePauseSeconds: null, note: null,
}
const onCard: PassSettings = { amps: null, volts: 20, wireFeedMmPerS: 65, contactTipToWorkMm: 22, polarity: 'DCEN', gas: null, arcSeconds: 57, lengthMm: 200 }
const silent: PassSettings = { amps: null, volts: null, wireFeedMmPerS: null, contactTipToWorkMm: null, polarity: null, gas: null, arcSeconds: null, lengthMm: null }

const shop = criteriaById('shop-bead')
const coach = (inspection: Inspection, passes: readonly PassSettings[] = [silent], more: Partial<CoachingInput> & { weld?: Weld } = {}) => {
  const joint = more.weld ?? weld
  return whatToChange({ inspection, passes, boothCard: card, scorecard: scoreInspection(joint, inspection, shop), ...more, weld: joint })
}
const first = (...input: Parameters<typeof coach>) => coach(...input)[0]

describe('settings off the booth card decide the order', () => {
  it.each([
    ['volts over the card', { volts: 24 }, 'volts-too-high', 'lower-volts'],
    ['stick-out under the card', { contactTipToWorkMm: 12 }, 'stick-out-too-short', 'lengthen-stick-out'],
    ['stick-out over the card', { contactTipToWorkMm: 40 }, 'stick-out-too-long', 'shorten-stick-out'],
    ['another polarity', { polarity: 'DCEP' }, 'wrong-polarity', 'set-polarity'],
    ['travel over the card', { arcSeconds: 30 }, 'travel-too-fast', 'slow-down'],
  ] as const)('of porosity: %s', (_, change, cause, remedy) => {
    expect(first(pores(20, 100, 190), [{ ...onCard, ...change }])).toMatchObject({ rule: 'porosity', symptom: 'porosity', aim: 'mend', cause, remedy, likelihood: 'likely' })
  })

  it('of a narrow bead: travel over the card rather than wire feed, which was on it', () => {
    const advice = coach(widths(7, 7, 7), [{ ...onCard, arcSeconds: 40 }])
    expect(advice[0]).toMatchObject({ symptom: 'bead-too-narrow', cause: 'travel-too-fast', likelihood: 'likely' })
    expect(advice[0]?.evidence).toEqual([{ code: 'above-card', setting: 'travel-speed', pass: null, value: 5, min: 3, max: 4 }])
    expect(advice.map(one => one.cause)).not.toContain('wire-feed-too-low')
  })

  it('of a narrow bead: wire feed under the card rather than travel, which was on it', () => {
    expect(first(widths(7, 7, 7), [{ ...onCard, wireFeedMmPerS: 45 }])).toMatchObject({ cause: 'wire-feed-too-low', likelihood: 'likely' })
  })

  it('of a wide bead: slow travel', () => {
    expect(first(widths(12, 12, 12), [{ ...onCard, arcSeconds: 90 }])).toMatchObject({ symptom: 'bead-too-wide', cause: 'travel-too-slow', remedy: 'speed-up' })
  })

  it('never blames fast travel when it was slower than the card', () => {
    expect(coach(widths(7, 7, 7), [{ ...onCard, arcSeconds: 90 }]).map(one => one.cause)).not.toContain('travel-too-fast')
  })

  it('names the pass that was farthest off, and only when there were several', () => {
    const passes = [onCard, { ...onCard, volts: 25 }, { ...onCard, volts: 23 }]
    expect(first(pores(20, 100, 190), passes.slice(0, 2))?.evidence[0]).toMatchObject({ pass: 2 })
    expect(first(pores(20, 100, 190), passes.slice(1, 2))?.evidence[0]).toMatchObject({ pass: null })
    expect(first(pores(20, 100, 190), passes)?.evidence[0]).toMatchObject({ code: 'above-card', setting: 'volts', pass: 2, value: 25 })
  })

  it('takes a setting within a twentieth of the card as on it', () => {
    expect(first(pores(20, 100, 190), [{ ...onCard, volts: 22.05 }])?.cause).not.toBe('volts-too-high')
    expect(first(pores(20, 100, 190), [{ ...onCard, volts: 22.06 }])?.cause).toBe('volts-too-high')
    expect(first(pores(20, 100, 190), [{ ...onCard, contactTipToWorkMm: 18.05 }])?.cause).not.toBe('stick-out-too-short')
    expect(first(pores(20, 100, 190), [{ ...onCard, contactTipToWorkMm: 18.04 }])?.cause).toBe('stick-out-too-short')
  })

  it('judges stick electrodes by amps and wire by its feed', () => {
    const stick = { ...weld, process: 'SMAW' as const }
    const stickCard = { ...card, polarity: 'DCEP' as const, amps: { min: 110, max: 130 }, volts: null, wireFeedMmPerS: null, contactTipToWorkMm: null }
    expect(first(widths(7, 7, 7), [{ ...silent, amps: 90 }], { weld: stick, boothCard: stickCard })).toMatchObject({ cause: 'amps-too-low', remedy: 'raise-amps' })
    expect(first(widths(7, 7, 7), [{ ...silent, amps: 90 }], { boothCard: { ...card, wireFeedMmPerS: null, amps: { min: 110, max: 130 } } })).toMatchObject({ cause: 'wire-feed-too-low' })
  })

  it('says that the gas was not the one on the card', () => {
    const gmaw = { ...weld, process: 'GMAW' as const }
    const advice = first(pores(20, 100, 190), [{ ...silent, gas: 'C1' }], { weld: gmaw, boothCard: { ...card, gas: 'M21' } })
    expect(advice).toMatchObject({ cause: 'gas-coverage-poor', likelihood: 'likely' })
    expect(advice?.evidence).toContainEqual({ code: 'gas-differs', pass: null, used: 'C1', card: 'M21' })
    expect(first(pores(20, 100, 190), [{ ...silent, gas: ' m21' }], { weld: gmaw, boothCard: { ...card, gas: 'M21' } })?.evidence.map(one => one.code)).not.toContain('gas-differs')
  })
})

describe('what the settings rule out', () => {
  it('does not offer a wrong polarity when every pass ran the card’s', () => {
    const causes = (passes: readonly PassSettings[]) => coach(pores(5, 12), passes).map(one => one.cause)
    const unsaid = { ...onCard, polarity: null }
    expect(causes([unsaid])).toContain('wrong-polarity')
    expect(causes([onCard, unsaid])).toContain('wrong-polarity')
    expect(causes([onCard, onCard])).not.toContain('wrong-polarity')
  })

  it('does not offer a setting that was on the card unless a reading points to it', () => {
    expect(coach(pores(5, 12), [onCard]).map(one => one.cause)).not.toContain('volts-too-high')
    const spread = coach(pores(5, 100, 190), [onCard]).find(one => one.cause === 'volts-too-high')
    expect(spread?.likelihood ?? 'possible').toBe('possible')
    expect(coach(pores(5, 100, 190), [silent])[0]).toMatchObject({ cause: 'volts-too-high', likelihood: 'likely' })
  })

  it('puts the setting farthest off first among those that are off', () => {
    expect(first(pores(5, 100, 190), [{ ...onCard, volts: 23, contactTipToWorkMm: 10 }])?.cause).toBe('stick-out-too-short')
    expect(first(pores(5, 100, 190), [{ ...onCard, volts: 30, contactTipToWorkMm: 17 }])?.cause).toBe('volts-too-high')
  })

  it('puts a setting off the card before a cause that readings point to', () => {
    expect(first(undercut('A', 'A'), [{ ...onCard, volts: 24 }])?.cause).toBe('volts-too-high')
  })

  it('puts another polarity before a cause that readings point to', () => {
    expect(first(pores(5, 12), [{ ...silent, polarity: 'DCEP' }])?.cause).toBe('wrong-polarity')
  })
})

describe('readings decide when the settings are silent', () => {
  it('pores at the start: the wire end was not trimmed', () => {
    const advice = first(pores(5, 12))
    expect(advice).toMatchObject({ cause: 'wire-end-not-trimmed', remedy: 'trim-wire', likelihood: 'likely' })
    expect(advice?.evidence).toEqual([{ code: 'pores-near-start', count: 2, total: 2, withinMm: 25 }])
  })

  it('pores at the start of a stick weld: a cold start', () => {
    expect(first(pores(5, 12), [silent], { weld: { ...weld, process: 'SMAW' } })).toMatchObject({ cause: 'start-struck-cold', likelihood: 'likely' })
  })

  it('does not blame the start for pores all along', () => {
    expect(coach(pores(5, 100, 190)).flatMap(one => one.evidence).map(one => one.code)).toContain('pores-spread')
    expect(coach(pores(5, 100, 190)).map(one => one.cause)).not.toContain('wire-end-not-trimmed')
  })

  it('undercut on the upper toe of a horizontal fillet: aimed too high', () => {
    expect(first(undercut('A', 'A'))).toMatchObject({ cause: 'aim-too-high', remedy: 'aim-lower', likelihood: 'likely' })
  })

  it('undercut on both toes of a vertical weld: fast travel or short pauses, not the aim', () => {
    const causes = coach(undercut('A', 'B'), [silent], { weld: vertical }).map(one => one.cause)
    expect(causes.slice(0, 3)).toEqual(expect.arrayContaining(['travel-too-fast', 'side-pauses-too-short']))
    expect(causes).not.toContain('aim-off-root')
  })

  it('a bead that narrows in its last third: hurried at the end', () => {
    const advice = coach(widths(9.4, 9.2, 7)).find(one => one.symptom === 'width-uneven')
    expect(advice).toMatchObject({ cause: 'hurried-end', remedy: 'reach-the-end', likelihood: 'likely' })
    expect(advice?.evidence).toContainEqual(expect.objectContaining({ code: 'narrower-last-third', lastMm: 7 }))
  })

  it('a bead that widens in its last third: the plate got hot, and nothing about hurrying', () => {
    const causes = coach(widths(8.2, 8.2, 10.5)).map(one => one.cause)
    expect(causes).toContain('plate-too-hot')
    expect(causes).not.toContain('hurried-end')
  })

  it.each([
    ['lower', { legAMm: 8, legBMm: 12 }, 'aim-too-low', 'aim-too-high'],
    ['upper', { legAMm: 12, legBMm: 8 }, 'aim-too-high', 'aim-too-low'],
  ] as const)('a longer %s leg of a horizontal fillet tells where the arc was aimed', (_, legs, cause, opposite) => {
    const advice = coach({ ...clean, stations: [station(30, legs), station(100, legs), station(170, legs)] })
    expect(advice[0]).toMatchObject({ rule: 'leg-balance', cause, likelihood: 'likely' })
    expect(advice.map(one => one.cause)).not.toContain(opposite)
  })

  it('a fault at the end of the bead: the arc was broken early', () => {
    const pipe: Inspection = { ...clean, cratersFilled: false, indications: [{ kind: 'crater-pipe', atMm: 195 }] }
    expect(first(pipe)).toMatchObject({ rule: 'crater', cause: 'arc-broken-early', remedy: 'fill-crater', likelihood: 'likely' })
    const early: Inspection = { ...pipe, indications: [{ kind: 'crater-pipe', atMm: 80 }] }
    expect(first(early)).toMatchObject({ cause: 'arc-broken-early', likelihood: 'possible', evidence: [] })
  })

  it('calls nothing likely when neither settings nor readings point anywhere', () => {
    const advice = coach({ ...clean, indications: [{ kind: 'undercut', atMm: 60, lengthMm: 30, depthMm: 2 }] })
    expect(advice.length).toBeGreaterThan(0)
    expect(advice.every(one => one.likelihood === 'possible' && one.evidence.length === 0)).toBe(true)
  })

  it('lets readings make at most one cause of a rule likely', () => {
    const likely = coach(undercut('A', 'B'), [silent], { weld: vertical }).filter(one => one.rule === 'undercut' && one.likelihood === 'likely')
    expect(likely).toHaveLength(1)
  })
})

describe('the thing that matters most comes first', () => {
  it('puts a crack before everything, however small the rest', () => {
    const inspection: Inspection = { ...widths(20, 20, 20), indications: [{ kind: 'crack', atMm: 10 }, { kind: 'undercut', atMm: 50, lengthMm: 90, depthMm: 4 }] }
    expect(first(inspection)).toMatchObject({ rule: 'crack', symptom: 'crack' })
  })

  it('puts undercut before an uneven bead', () => {
    const inspection: Inspection = { ...widths(5, 20, 5), indications: [{ kind: 'undercut', atMm: 50, lengthMm: 20, depthMm: 0.9 }] }
    expect(first(inspection)?.rule).toBe('undercut')
  })

  it('among equals, puts the one farthest outside first', () => {
    const mixed = (leg: number, depthMm: number): Inspection => ({
      ...clean, stations: [station(30, { legAMm: leg, legBMm: leg }), station(100), station(170)], indications: [{ kind: 'undercut', atMm: 50, lengthMm: 20, depthMm }],
    })
    expect(first(mixed(7.9, 3))?.rule).toBe('undercut')
    expect(first(mixed(2, 0.85))?.rule).toBe('leg-size')
  })

  it('lets a fault that keeps coming back overtake one slightly worse, and says so', () => {
    const inspection: Inspection = { ...clean, stations: [station(30, { legAMm: 7.6, legBMm: 7.6 }), station(100), station(170)], indications: [{ kind: 'undercut', atMm: 50, lengthMm: 20, depthMm: 1 }] }
    const earlier = scoreInspection(weld, { ...clean, stations: [station(30, { legAMm: 7 })] }, shop)
    expect(first(inspection)?.rule).toBe('undercut')
    const advice = first(inspection, [silent], { history: [scoreInspection(weld, clean, shop), earlier, earlier] })
    expect(advice?.rule).toBe('leg-size')
    expect(advice?.evidence).toContainEqual({ code: 'seen-before', times: 2, of: 3 })
  })

  it('looks back no farther than five coupons', () => {
    const bad = scoreInspection(weld, pores(50), shop)
    const good = scoreInspection(weld, clean, shop)
    const advice = first(pores(50, 120), [silent], { history: [bad, good, good, good, good, good] })
    expect(advice?.evidence.map(one => one.code)).not.toContain('seen-before')
  })

  it('tells a cause once, with the other rules it would explain', () => {
    const inspection: Inspection = { ...widths(7, 7, 7), indications: [{ kind: 'undercut', atMm: 50, lengthMm: 40, depthMm: 1.5 }] }
    const advice = coach(inspection, [{ ...onCard, arcSeconds: 40 }])
    expect(advice[0]).toMatchObject({ rule: 'undercut', cause: 'travel-too-fast', alsoExplains: ['width-in-band'] })
    expect(advice.filter(one => one.cause === 'travel-too-fast')).toHaveLength(1)
    expect(advice.some(one => one.rule === 'width-in-band')).toBe(false)
  })

  it('tells two rules about the same pores once', () => {
    const many: Inspection = { ...clean, indications: [20, 24, 28, 32, 36, 40].map(atMm => ({ kind: 'pore' as const, atMm, diameterMm: 5 })) }
    const scorecard = scoreInspection(weld, many, criteriaById('structural-static.si'))
    expect(scorecard.findings.filter(one => one.verdict === 'reject').map(one => one.rule)).toEqual(['porosity-per-inch', 'porosity-per-12-inches'])
    expect(new Set(whatToChange({ weld, inspection: many, scorecard, passes: [], boothCard: null }).map(one => one.rule)).size).toBe(1)
  })

  it('prefers the cause that would explain more of what was rejected', () => {
    const undercutOnly: Inspection = { ...clean, indications: [{ kind: 'undercut', atMm: 60, lengthMm: 30, depthMm: 2 }] }
    const withShortLegs: Inspection = { ...undercutOnly, stations: clean.stations.map(one => ({ ...one, legAMm: 7.9, legBMm: 7.9 })) }
    const place = (inspection: Inspection) => coach(inspection, [silent], { weld: vertical }).filter(one => one.rule === 'undercut').map(one => one.cause)
    expect(place(undercutOnly)).toContain('side-pauses-too-short')
    expect(place(withShortLegs)[0]).toBe('travel-too-fast')
    expect(coach(withShortLegs, [silent], { weld: vertical })[0]?.alsoExplains).toEqual(['leg-size'])
  })

  it('gives at most three causes for a rule', () => {
    expect(coach(pores(5, 100, 190)).filter(one => one.rule === 'porosity')).toHaveLength(3)
  })
})

describe('an accepted coupon', () => {
  const nearLeg: Inspection = { ...clean, stations: [station(30, { legAMm: 8.05 }), station(100), station(170)] }
  const nearUndercut: Inspection = { ...clean, stations: clean.stations.map(one => ({ ...one, legAMm: 9.4, legBMm: 9.4, widthMm: 8.8 })), indications: [{ kind: 'undercut', atMm: 50, lengthMm: 20, depthMm: 0.78 }] }

  it.each([['leg-size', nearLeg], ['undercut', nearUndercut]] as const)('is told that %s came closest to its limit', (rule, inspection) => {
    for (const criteria of [undefined, shop]) {
      const advice = coach(inspection, [silent], criteria === undefined ? {} : { criteria })
      expect(advice[0]).toMatchObject({ rule, aim: 'hold' })
      expect(new Set(advice.map(one => one.rule)).size).toBe(1)
    }
  })

  it('tells a bead near the wide end of its band from one near the narrow end', () => {
    const near = (widthMm: number) => first({ ...clean, stations: clean.stations.map(one => ({ ...one, legAMm: 12, legBMm: 12, widthMm })) })
    expect(near(9.5)).toMatchObject({ rule: 'width-in-band', symptom: 'bead-too-wide' })
    expect(near(8.1)).toMatchObject({ rule: 'width-in-band', symptom: 'bead-too-narrow' })
  })

  it('counts a band from its middle to its end, as a limit is counted from nothing', () => {
    const bead = (depthMm: number): Inspection => ({
      ...clean, stations: clean.stations.map(one => ({ ...one, legAMm: 20, legBMm: 20, widthMm: 9.1 })), indications: [{ kind: 'undercut', atMm: 50, lengthMm: 20, depthMm }],
    })
    expect(first(bead(0.24))?.rule).toBe('width-in-band')
    expect(first(bead(0.36))?.rule).toBe('undercut')
  })

  it('is told nothing when no reading used any of its limit', () => {
    const scorecard = scoreInspection(weld, clean, { ...shop, rules: shop.rules.filter(rule => ['crack', 'undercut', 'porosity'].includes(rule.id)) })
    expect(scorecard.verdict).toBe('accept')
    expect(whatToChange({ weld, inspection: clean, scorecard, passes: [onCard], boothCard: card })).toEqual([])
  })
})

it('coaches without a booth card and without passes', () => {
  const scorecard = scoreInspection(weld, pores(5, 12), shop)
  expect(whatToChange({ weld, inspection: pores(5, 12), scorecard, passes: [], boothCard: null })[0]).toMatchObject({ cause: 'wire-end-not-trimmed' })
})

it('marks every piece of advice as common practice', () => {
  expect(coach(pores(5, 100, 190)).every(one => one.source.status === 'common-practice')).toBe(true)
})

it.each([{ volts: 0 }, { contactTipToWorkMm: -3 }, { wireFeedMmPerS: NaN }, { arcSeconds: 0 }, { lengthMm: -1 }])('refuses the setting %j', change => {
  expect(() => coach(pores(5), [{ ...onCard, ...change }])).toThrow(RangeError)
})

/** Advice whose own evidence says that its setting was off on the other side. */
const blamesTheOpposite = ({ cause, evidence }: Advice): boolean => {
  const side = CAUSES[cause].setting?.side
  return evidence.some(one => (one.code === 'above-card' && side === 'below') || (one.code === 'below-card' && side === 'above'))
}

describe('whatever was written down', () => {
  const size = fc.double({ min: 0, max: 15, noNaN: true })
  const place = fc.double({ min: 0, max: 200, noNaN: true })
  const setting = (middle: number) => fc.option(fc.double({ min: middle / 4, max: middle * 4, noNaN: true }), { nil: null })
  const anyPass: fc.Arbitrary<PassSettings> = fc.record({
    amps: setting(150), volts: setting(20), wireFeedMmPerS: setting(65), contactTipToWorkMm: setting(22), polarity: fc.constantFrom('DCEN', 'DCEP', null),
    gas: fc.constant(null), arcSeconds: setting(57), lengthMm: fc.constantFrom(200, null),
  })
  const anyInspection: fc.Arbitrary<Inspection> = fc.record({
    stations: fc.array(fc.record({ atMm: place, widthMm: size, legAMm: size, legBMm: size }), { minLength: 1, maxLength: 5 }),
    indications: fc.array(fc.record({ kind: fc.constantFrom(...INDICATION_KINDS), atMm: place, lengthMm: size, depthMm: size, diameterMm: size, toe: fc.constantFrom('A' as const, 'B' as const) }), { maxLength: 6 }),
    lookedFor: fc.constant([...INDICATION_KINDS]), cratersFilled: fc.boolean(), fusionComplete: fc.boolean(),
  })
  const anyWeld = fc.record({ process: fc.constantFrom('SMAW' as const, 'FCAW-S' as const, 'FCAW-G' as const, 'GMAW' as const), position: fc.constantFrom('1F', '2F', '3F', '4F') })
    .map(facts => ({ ...weld, ...facts, progression: facts.position === '3F' ? 'up' as const : null }))

  it('says something about every rejected coupon, the gravest fault first', () => {
    fc.assert(fc.property(anyWeld, anyInspection, fc.array(anyPass, { maxLength: 3 }), (joint, inspection, passes) => {
      const scorecard = scoreInspection(joint, inspection, shop)
      const advice = whatToChange({ weld: joint, inspection, scorecard, passes, boothCard: card, criteria: shop })
      const rejected = scorecard.findings.filter(one => one.verdict === 'reject').map(one => one.rule)
      expect(advice.every(one => rejected.length === 0 ? one.aim === 'hold' : rejected.includes(one.rule))).toBe(true)
      expect(advice.length > 0 || rejected.length === 0).toBe(true)
      if (rejected.includes('crack')) expect(['crack', 'fusion']).toContain(advice[0]?.rule)
      expect(advice.filter(one => blamesTheOpposite(one))).toEqual([])
      const numbers = advice.flatMap(one => one.evidence).flatMap(one => Object.values(one).filter(value => typeof value === 'number'))
      expect(numbers.every(Number.isFinite)).toBe(true)
    }))
  })

  it('does not mind the order of stations and indications', () => {
    fc.assert(fc.property(anyInspection, anyPass, (inspection, pass) => {
      const turned = { ...inspection, stations: [...inspection.stations].reverse(), indications: [...inspection.indications].reverse() }
      expect(coach(turned, [pass]).map(one => [one.rule, one.cause])).toEqual(coach(inspection, [pass]).map(one => [one.rule, one.cause]))
    }))
  })
})

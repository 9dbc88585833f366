import * as fc from 'fast-check'
import { INDICATION_KINDS, type Indication, type Inspection, type Station, type Weld } from '@/lib/scoring/types'

/** A length with the steps people read: sixteenths of a millimetre, so that ties and equal places happen. */
export const sizes = (most: number): fc.Arbitrary<number> => fc.integer({ min: 0, max: most * 16 }).map((n) => n / 16)

const maybe = <T>(value: fc.Arbitrary<T>, key: string): fc.Arbitrary<Record<string, T>> =>
  fc.option(value, { freq: 8 }).map((one): Record<string, T> => (one === null ? {} : { [key]: one }))

function merged(parts: readonly fc.Arbitrary<Record<string, number>>[]): fc.Arbitrary<Record<string, number>> {
  return fc.tuple(...parts).map((list) => Object.assign({}, ...list) as Record<string, number>)
}

const stationReadings = merged([
  maybe(sizes(14), 'widthMm'), maybe(sizes(10), 'legAMm'), maybe(sizes(10), 'legBMm'), maybe(sizes(8), 'throatMm'),
  maybe(sizes(4), 'convexityMm'), maybe(sizes(5), 'reinforcementMm'), maybe(sizes(3), 'misalignmentMm'), maybe(sizes(2), 'underfillMm'),
  maybe(sizes(2), 'rootConcavityMm'), maybe(sizes(4), 'penetrationMm'), maybe(sizes(9), 'rootWidthMm'), maybe(sizes(2), 'shrinkageGrooveMm'),
  maybe(sizes(2), 'rootShortfallMm'), maybe(sizes(1), 'rootPoreMm'), maybe(sizes(4), 'rootGapMm'), maybe(sizes(180), 'toeAngleDeg'),
])

export const stationsOn = (lengthMm: number): fc.Arbitrary<Station[]> =>
  fc.array(fc.tuple(sizes(lengthMm), stationReadings).map(([atMm, readings]): Station => ({ atMm, ...readings })), { maxLength: 7 })

export const indicationOn = (lengthMm: number): fc.Arbitrary<Indication> =>
  fc.tuple(
    fc.oneof(fc.constantFrom('undercut' as const, 'pore' as const), fc.constantFrom(...INDICATION_KINDS)), sizes(lengthMm),
    merged([maybe(sizes(60), 'lengthMm'), maybe(sizes(2), 'depthMm'), maybe(sizes(5), 'diameterMm'), maybe(sizes(3), 'heightMm')]),
    fc.constantFrom<Pick<Indication, 'toe'>>({}, { toe: 'A' }, { toe: 'B' }),
  ).map(([kind, atMm, readings, toe]): Indication => ({ kind, atMm, ...readings, ...toe }))

const welds: fc.Arbitrary<Weld> = fc.record({
  type: fc.constantFrom('fillet' as const, 'groove' as const),
  process: fc.constant('FCAW-S' as const), position: fc.constant('3F'), progression: fc.constant(null),
  thicknessMm: fc.constantFrom(2, 3, 6, 10, 25, 25.4, 40),
  electrodeDiameterMm: fc.constantFrom(null, 1.2, 1.6),
  nominalLegMm: fc.constantFrom(null, 4, 6, 6.35, 8),
  lengthMm: fc.constantFrom(40, 150, 300, 700),
  transverseToTension: fc.boolean(), completePenetration: fc.boolean(), stiffenerToWeb: fc.boolean(),
})

export type Look = { readonly weld: Weld; readonly inspection: Inspection }

const answers = { cratersFilled: fc.constantFrom(true, true, true, false, null), fusionComplete: fc.constantFrom(true, true, true, false, null) }
const gaugeResolutionMm = fc.constantFrom(0, 0.4, 0.79375)
const everything = fc.constant([...INDICATION_KINDS])

/** Anything at all. */
const wild: fc.Arbitrary<Look> = welds.chain((weld) =>
  fc.record({
    stations: stationsOn(weld.lengthMm),
    indications: fc.array(indicationOn(weld.lengthMm), { maxLength: 8 }),
    lookedFor: fc.oneof({ weight: 3, arbitrary: everything }, { weight: 1, arbitrary: fc.subarray([...INDICATION_KINDS]) }),
    ...answers, gaugeResolutionMm,
  }).map((inspection) => ({ weld, inspection })))

const between = (from: number, to: number): fc.Arbitrary<number> => sizes(to - from).map((more) => from + more)

/** Mostly a good reading, now and then one that may be off. */
const mostly = (good: fc.Arbitrary<number>, off: fc.Arbitrary<number>): fc.Arbitrary<number> =>
  fc.oneof({ weight: 12, arbitrary: good }, { weight: 1, arbitrary: off })

/** A weld near its limits: all measured, little wrong, so that a small change decides. */
const near: fc.Arbitrary<Look> = fc.record({
  type: fc.constantFrom('fillet' as const, 'groove' as const), thicknessMm: fc.constantFrom(3, 10, 30), lengthMm: fc.constantFrom(150, 400),
}).chain(({ type, thicknessMm, lengthMm }) => {
  const weld: Weld = {
    type, process: 'GMAW', position: '2F', progression: null, thicknessMm, lengthMm, electrodeDiameterMm: 1.6, nominalLegMm: 7,
  }
  const station = fc.record({
    atMm: sizes(lengthMm), widthMm: mostly(between(8, 9), between(7, 11)), legAMm: mostly(between(7, 9), between(4, 10)),
    legBMm: mostly(between(7, 9), between(4, 10)), throatMm: mostly(between(5, 6), between(3, 9)),
    convexityMm: mostly(sizes(1), sizes(4)), reinforcementMm: mostly(between(1, 2), sizes(5)),
  })
  const undercut = fc.record({ kind: fc.constant('undercut' as const), atMm: sizes(lengthMm), lengthMm: sizes(60), depthMm: mostly(sizes(1), sizes(2)), toe: fc.constantFrom('A' as const, 'B' as const) })
  const pore = fc.record({ kind: fc.constant('pore' as const), atMm: sizes(lengthMm), diameterMm: mostly(sizes(2), sizes(6)) })
  return fc.record({
    stations: fc.array(station, { minLength: 2, maxLength: 6 }), indications: fc.array(fc.oneof(undercut, pore), { maxLength: 3 }),
    lookedFor: everything, cratersFilled: fc.constant(true), fusionComplete: fc.constant(true), gaugeResolutionMm,
  }).map((inspection) => ({ weld, inspection }))
})

/** A weld and what someone saw on it. */
export const looks: fc.Arbitrary<Look> = fc.oneof(wild, near)

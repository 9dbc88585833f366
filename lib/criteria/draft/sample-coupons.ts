import { stationPlaces, type ExerciseFacts } from '../../procedure/exercise'
import { INDICATION_KINDS, type Indication, type Inspection, type Station } from '../../scoring/types'
import { inches } from '../limits'

/** An invented coupon that limits are tried on while they are written. */
export type SampleCoupon = { readonly id: string; readonly title: string; readonly exercise: ExerciseFacts; readonly inspection: Inspection }

const LENGTH = inches(8)
const STATIONS = 5

const facts: ExerciseFacts = {
  title: 'Sample', process: 'FCAW-S', joint: 'tee', weldType: 'fillet', position: '2F', progression: null, plateThicknessMm: inches(3 / 8), material: 'A36',
  electrodeClass: 'E71T-11', electrodeDiameterMm: inches(1 / 16), nominalLegMm: inches(5 / 16), lengthMm: LENGTH, passCount: 1, stationCount: STATIONS, gauge: 'in64',
  boothCard: {
    polarity: 'DCEN', amps: null, volts: null, wireFeedMmPerS: null, contactTipToWorkMm: null, travelSpeedMmPerS: null, gas: null, gasFlowLPerMin: null,
    workAngleDeg: null, travelAngleDeg: null, travelDirection: null, sidePauseSeconds: null, note: null,
  },
  criteria: { id: 'shop-bead', version: 1 },
}

/** Everything that any kind of rule can ask for is measured, so that no rule goes unanswered on a sample. */
const fillet: Omit<Station, 'atMm'> = {
  widthMm: inches(11 / 32), legAMm: inches(11 / 32), legBMm: inches(5 / 16), throatMm: inches(15 / 64), convexityMm: inches(1 / 32), reinforcementMm: 0,
  penetrationMm: 0, rootConcavityMm: 0, misalignmentMm: 0, underfillMm: 0, rootWidthMm: 0, shrinkageGrooveMm: 0, rootShortfallMm: 0, rootPoreMm: 0,
  rootGapMm: 0, toeAngleDeg: 120,
}
const groove: Omit<Station, 'atMm'> = {
  ...fillet, widthMm: inches(3 / 8), reinforcementMm: inches(1 / 16), convexityMm: 0, penetrationMm: inches(1 / 32), rootWidthMm: inches(5 / 32), toeAngleDeg: 150,
}

const stations = (each: Omit<Station, 'atMm'>, widths: readonly number[]): Station[] =>
  stationPlaces(LENGTH, STATIONS).map((atMm, index) => ({ ...each, atMm, widthMm: inches(widths[index] ?? 0) }))

function look(along: readonly Station[], indications: readonly Indication[]): Inspection {
  return { stations: along, indications, lookedFor: INDICATION_KINDS, cratersFilled: true, fusionComplete: true, gaugeResolutionMm: inches(1 / 64) }
}

const EVEN = [11 / 32, 11 / 32, 23 / 64, 11 / 32, 11 / 32]
const WANDERING = [5 / 16, 11 / 32, 3 / 8, 11 / 32, 21 / 64]

/** Invented, so that limits have something to bite on: a clean fillet, one with the usual small faults, and a groove weld. */
export const SAMPLE_COUPONS: readonly SampleCoupon[] = [
  {
    id: 'faults', title: 'Fillet with small faults', exercise: facts,
    inspection: look(stations(fillet, WANDERING), [
      { kind: 'undercut', atMm: inches(2.5), lengthMm: inches(1 / 2), depthMm: inches(1 / 32), toe: 'A' },
      { kind: 'undercut', atMm: inches(6), lengthMm: inches(1), depthMm: inches(1 / 64), toe: 'A' },
    ]),
  },
  { id: 'clean', title: 'Clean fillet', exercise: facts, inspection: look(stations(fillet, EVEN), []) },
  {
    id: 'pores', title: 'Fillet with pores and a high crown', exercise: facts,
    inspection: look(stations({ ...fillet, convexityMm: inches(3 / 32) }, EVEN), [
      { kind: 'pore', atMm: inches(3), diameterMm: inches(1 / 32) },
      { kind: 'pore', atMm: inches(3.5), diameterMm: inches(3 / 64) },
      { kind: 'spatter', atMm: inches(5) },
    ]),
  },
  {
    id: 'groove', title: 'Groove weld, complete penetration', exercise: { ...facts, joint: 'butt', weldType: 'groove', position: '2G', nominalLegMm: null, completePenetration: true },
    inspection: look(stations(groove, EVEN), [{ kind: 'undercut', atMm: inches(4), lengthMm: inches(1 / 2), depthMm: inches(1 / 64), toe: 'B' }]),
  },
]

/** The sample of that id; the first where there is none. */
export function sampleCoupon(id: string): SampleCoupon {
  const [first] = SAMPLE_COUPONS
  const found = SAMPLE_COUPONS.find((sample) => sample.id === id) ?? first
  if (found === undefined) throw new RangeError('There is no sample coupon.')
  return found
}

import 'server-only'
import { toeSide } from '@/lib/coaching/toe-side'
import { readClassification } from '@/lib/consumables/classification'
import { consumableSizesMm } from '@/lib/consumables/check-set-up-answers'
import { NO_ANSWERS } from '@/lib/consumables/set-up-answers'
import { readingsNeeded, readingsWhereRecorded } from '@/lib/criteria/readings-needed'
import { arcOnSeconds } from '@/lib/procedure/arc-time'
import type { PassSettings } from '@/lib/procedure/booth-card'
import { stationPlaces } from '@/lib/procedure/exercise'
import type { Process } from '@/lib/procedure/process'
import { readPassSoFar } from '@/lib/procedure/typed-pass'
import { padBands } from '@/lib/reports/pad-bands'
import { setUpLines, type SetUpBasis, type SetUpView } from '@/lib/reports/set-up-lines'
import type { SizeFrame } from '@/lib/reports/size-frame'
import { blankPass, type PassForm } from '@/lib/schemas/passes'
import { blankReadings, stationBoxOf, type ReadingsForm, type StationBox } from '@/lib/schemas/readings'
import { weldOfExercise } from '@/lib/scoring/weld-of-exercise'
import { formatForReader } from '@/lib/units/display'
import { padGauge } from '@/lib/units/gauge-steps'
import { formatWireFeedSpeed, wireFeedMmPerS } from '@/lib/units/wire-feed-speed'
import type { Viewer } from '../auth/viewer'
import { lastPasses } from '../data/coupon-record'
import { criteriaSet } from '../data/criteria'
import type { ExerciseRecord } from '../data/exercises'

export type ReadingsSetup = { readonly boxes: readonly StationBox[]; readonly vertical: boolean; readonly frame: SizeFrame; readonly blank: ReadingsForm }
export type LogView = ReadingsSetup & {
  readonly passes: readonly PassForm[]
  /** Where the settings come from: the student's last coupon of this exercise, or only polarity and gas from the booth card. */
  readonly passesFrom: 'last-coupon' | 'booth-card'
  readonly process: Process
  /** Arc time of the whole weld at the booth card's slowest travel; null when the card does not say. */
  readonly expectedArcSeconds: number | null
  readonly setUp: SetUpView
}

/** What an inspection form of an exercise asks for, with its stations in place and the pad of each size. */
export async function readingsSetup(viewer: Viewer, exercise: ExerciseRecord): Promise<ReadingsSetup> {
  const criteria = await criteriaSet(viewer.programId, exercise.criteria.id, exercise.criteria.version)
  const places = stationPlaces(exercise.lengthMm, exercise.stationCount).map((at) => formatForReader(at, viewer.units).replace(/ (in|mm)$/, ''))
  const fields = readingsNeeded(criteria, exercise.weldType)
  const pads = padBands(weldOfExercise(exercise), criteria, fields)
  return {
    boxes: fields.map(stationBoxOf),
    vertical: toeSide(exercise.position, 'A') === 'left',
    frame: {
      units: viewer.units, gauge: padGauge(exercise.gauge, viewer.units), lengthMm: exercise.lengthMm, position: exercise.position,
      pads: Object.fromEntries(fields.flatMap((field) => (pads[field] ? [[stationBoxOf(field), pads[field]]] : []))),
      offered: readingsWhereRecorded(criteria, exercise.weldType).map(stationBoxOf),
    },
    blank: blankReadings(places),
  }
}

/** The log form of an exercise, its settings filled in from the student's last coupon, or from the booth card before there is one. */
export async function logView(viewer: Viewer, exercise: ExerciseRecord): Promise<LogView> {
  const last = await lastPasses(viewer, exercise.id)
  const passes = last.length > 0 ? last.map((pass) => passForm(pass, viewer)) : Array.from({ length: exercise.passCount }, () => ({ ...blankPass(), polarity: exercise.boothCard.polarity, gas: exercise.boothCard.gas ?? '' }))
  const slowest = exercise.boothCard.travelSpeedMmPerS?.min ?? null
  return {
    ...(await readingsSetup(viewer, exercise)), passes, passesFrom: last.length > 0 ? 'last-coupon' : 'booth-card', process: exercise.process,
    expectedArcSeconds: slowest === null || slowest <= 0 ? null : arcOnSeconds(exercise.lengthMm, slowest),
    setUp: setUpView(viewer, exercise, passes[0] ?? blankPass()),
  }
}

/** What the set-up is checked against, and what the settings filled in differ in. */
function setUpView(viewer: Viewer, exercise: ExerciseRecord, first: PassForm): SetUpView {
  const { process, position, progression, plateThicknessMm, passCount, electrodeDiameterMm } = exercise
  const basis: SetUpBasis = {
    consumable: readClassification(exercise.electrodeClass), card: exercise.boothCard,
    facts: { process, position, progression, plateThicknessMm, passCount, electrodeDiameterMm },
  }
  return {
    basis, lines: setUpLines(basis, readPassSoFar(first, viewer.units), NO_ANSWERS, viewer),
    sizes: consumableSizesMm(exercise).map((mm) => ({ value: String(mm), label: formatForReader(mm, viewer.units) })),
    positions: ['1', '2', '3', '4'].map((number) => `${number}${exercise.weldType === 'fillet' ? 'F' : 'G'}`),
  }
}

/** A pass's settings as text for the boxes; times and lengths are the new coupon's own and stay empty. */
function passForm(pass: PassSettings, { units }: Viewer): PassForm {
  const number = (value: number | null): string => (value === null ? '' : String(Number(value.toFixed(2))))
  return {
    ...blankPass(),
    amps: number(pass.amps),
    volts: number(pass.volts),
    wireFeed: pass.wireFeedMmPerS === null ? '' : formatWireFeedSpeed(wireFeedMmPerS(pass.wireFeedMmPerS), units === 'in' ? { unit: 'in/min', digits: 0 } : { unit: 'm/min', digits: 1 }),
    stickOut: pass.contactTipToWorkMm === null ? '' : formatForReader(pass.contactTipToWorkMm, units),
    polarity: pass.polarity,
    gas: pass.gas ?? '',
  }
}

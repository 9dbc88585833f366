import 'server-only'
import { toeSide } from '@/lib/coaching/toe-side'
import { readingsNeeded } from '@/lib/criteria/readings-needed'
import type { PassSettings } from '@/lib/procedure/booth-card'
import { stationPlaces } from '@/lib/procedure/exercise'
import { blankPass, type PassForm } from '@/lib/schemas/passes'
import { blankReadings, type ReadingsForm, type StationBox } from '@/lib/schemas/readings'
import { formatForReader } from '@/lib/units/display'
import { formatWireFeedSpeed, wireFeedMmPerS } from '@/lib/units/wire-feed-speed'
import type { Viewer } from '../auth/viewer'
import { lastPasses } from '../data/coupon-record'
import { criteriaSet } from '../data/criteria'
import type { ExerciseRecord } from '../data/exercises'

export type ReadingsSetup = { readonly boxes: readonly StationBox[]; readonly vertical: boolean; readonly blank: ReadingsForm }
export type LogView = ReadingsSetup & {
  readonly passes: readonly PassForm[]
  readonly usesWire: boolean
  readonly usesGas: boolean
}

/** What an inspection form of an exercise asks for, with its stations in place. */
export async function readingsSetup(viewer: Viewer, exercise: ExerciseRecord): Promise<ReadingsSetup> {
  const criteria = await criteriaSet(viewer.programId, exercise.criteria.id, exercise.criteria.version)
  const places = stationPlaces(exercise.lengthMm, exercise.stationCount).map((at) => formatForReader(at, viewer.units))
  return {
    boxes: readingsNeeded(criteria, exercise.weldType).map((field) => field.replace(/Mm$/, '') as StationBox),
    vertical: toeSide(exercise.position, 'A') === 'left',
    blank: blankReadings(places),
  }
}

/** The log form of an exercise, its settings filled in from the student's last coupon, or from the booth card before there is one. */
export async function logView(viewer: Viewer, exercise: ExerciseRecord): Promise<LogView> {
  const last = await lastPasses(viewer, exercise.id)
  const passes = last.length > 0 ? last.map((pass) => passForm(pass, viewer)) : Array.from({ length: exercise.passCount }, () => ({ ...blankPass(), polarity: exercise.boothCard.polarity, gas: exercise.boothCard.gas ?? '' }))
  return { ...(await readingsSetup(viewer, exercise)), passes, usesWire: exercise.process !== 'SMAW', usesGas: exercise.process === 'FCAW-G' || exercise.process === 'GMAW' }
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

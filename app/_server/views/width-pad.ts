import 'server-only'
import { padBands, type PadBand } from '@/lib/reports/pad-bands'
import type { SizePadFrame } from '@/lib/reports/size-frame'
import { weldOfExercise } from '@/lib/scoring/weld-of-exercise'
import { padGauge } from '@/lib/units/gauge-steps'
import type { Viewer } from '../auth/viewer'
import { criteriaSet } from '../data/criteria'
import type { ExerciseRecord } from '../data/exercises'

/** The pad of an exercise's width, and what its criteria allow; null where there is none. */
export async function widthBandOf({ programId }: Viewer, exercise: ExerciseRecord): Promise<PadBand | null> {
  const criteria = await criteriaSet(programId, exercise.criteria.id, exercise.criteria.version)
  return padBands(weldOfExercise(exercise), criteria, ['widthMm']).widthMm ?? null
}

/** The same as a tap pad that does not tell what is allowed: it would lead the eye of whoever only measures. */
export async function widthPad(viewer: Viewer, exercise: ExerciseRecord): Promise<SizePadFrame | null> {
  const band = await widthBandOf(viewer, exercise)
  return band && { gauge: padGauge(exercise.gauge, viewer.units), band: { ...band, allowed: null } }
}

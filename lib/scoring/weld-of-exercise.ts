import type { ExerciseFacts } from '../procedure/exercise'
import type { Weld } from './types'

/** The part of an exercise that criteria depend on. */
export function weldOfExercise(exercise: ExerciseFacts): Weld {
  const { completePenetration, transverseToTension, stiffenerToWeb } = exercise
  return {
    type: exercise.weldType,
    process: exercise.process,
    position: exercise.position,
    progression: exercise.progression,
    thicknessMm: exercise.plateThicknessMm,
    electrodeDiameterMm: exercise.electrodeDiameterMm,
    nominalLegMm: exercise.nominalLegMm,
    lengthMm: exercise.lengthMm,
    ...(typeof completePenetration === 'boolean' && { completePenetration }),
    ...(typeof transverseToTension === 'boolean' && { transverseToTension }),
    ...(typeof stiffenerToWeb === 'boolean' && { stiffenerToWeb }),
  }
}

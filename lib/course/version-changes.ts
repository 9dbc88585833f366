import type { ExerciseFacts } from '../procedure/exercise'
import type { LengthUnit } from '../units/length'
import { CARD_RANGES, EXERCISE_BOXES, JOINT_FACTS, rangeKind, typedExercise, type TypedExercise } from './typed-exercise'

const NAMES: Readonly<Record<(typeof EXERCISE_BOXES)[number] | (typeof JOINT_FACTS)[number], string>> = {
  title: 'Title', process: 'Process', joint: 'Joint', position: 'Position', progression: 'Progression', plateThickness: 'Plate', material: 'Base metal',
  electrodeClass: 'Wire or rod', electrodeDiameter: 'Wire or rod size', nominalLeg: 'Fillet leg', length: 'Weld length', passCount: 'Passes', stationCount: 'Stations',
  gauge: 'Gauge', criteria: 'Criteria', polarity: 'Polarity', gas: 'Gas', travelDirection: 'Drag or push', note: 'Note on the card',
  completePenetration: 'Complete penetration', transverseToTension: 'Across the tension', stiffenerToWeb: 'Stiffener to web',
}

/** What changed from one version of an exercise to the next, a sentence for each thing, in the reader's units. Empty when nothing a reader sees did. */
export function versionChanges(before: ExerciseFacts, after: ExerciseFacts, units: LengthUnit): string[] {
  const [was, is] = [typedExercise(before, units), typedExercise(after, units)]
  const plain = [...EXERCISE_BOXES, ...JOINT_FACTS].flatMap((box) => changed(NAMES[box], was[box], is[box]))
  const ranges = CARD_RANGES.flatMap((range) => changed(rangeKind(range, units).label, rangeText(was, range), rangeText(is, range)))
  return [...plain, ...ranges]
}

function changed(name: string, was: string, is: string): string[] {
  return was === is ? [] : [`${name}: ${was || 'not given'} became ${is || 'not given'}.`]
}

function rangeText(typed: TypedExercise, range: (typeof CARD_RANGES)[number]): string {
  const [min, max] = [typed[`${range}Min`], typed[`${range}Max`]]
  if (min && max) return `${min} to ${max}`
  return min ? `at least ${min}` : max ? `at most ${max}` : ''
}

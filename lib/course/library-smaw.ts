import { libraryExercise, type CardPlan, type LibraryExercise, type LibraryPlan } from './library-exercise'

const lowHydrogen: CardPlan = {
  polarity: 'DCEP', amps: [110, 145], travel: [5, 9], work: [40, 50], angle: [5, 15], direction: 'drag', note: 'Rods straight from the oven. Hold an arc no longer than the rod is thick.',
}
const upward = { amps: [105, 130], travel: [3, 5], angle: [0, 10], direction: 'push', pause: [0.4, 0.9] } as const
const E7018 = { process: 'SMAW', rod: 'E7018', size: 1 / 8 } as const
const E6010 = { process: 'SMAW', rod: 'E6010', size: 1 / 8 } as const
const fast: CardPlan = {
  polarity: 'DCEP', amps: [75, 115], travel: [6, 11], work: [40, 50], angle: [5, 15], direction: 'drag', note: 'Step ahead and back: let the puddle freeze before you fill it.',
}

const plans: readonly LibraryPlan[] = [
  { ...E7018, key: 'smaw-1f-lap', about: 'First beads with a low-hydrogen rod: arc length and travel.', joint: 'lap', position: '1F', plate: 3 / 8, leg: 1 / 4, card: lowHydrogen },
  { ...E7018, key: 'smaw-2f-tee', about: 'Equal legs on a horizontal fillet.', joint: 'tee', position: '2F', plate: 3 / 8, leg: 1 / 4, card: lowHydrogen },
  { ...E6010, key: 'smaw-2f-lap-fast', about: 'A fast-freezing rod: whip and pause.', joint: 'lap', position: '2F', plate: 1 / 4, leg: 3 / 16, card: fast },
  { ...E7018, key: 'smaw-3f-lap', about: 'A shelf to build on, pauses at the sides.', joint: 'lap', position: '3F', progression: 'up', plate: 3 / 8, leg: 1 / 4, card: { ...lowHydrogen, ...upward } },
  { ...E7018, key: 'smaw-4f-tee', about: 'Overhead with the shortest arc you can hold.', joint: 'tee', position: '4F', plate: 3 / 8, leg: 1 / 4, card: { ...lowHydrogen, amps: [105, 130], note: 'Overhead: collar closed, cap on. The shortest arc you can hold.' } },
  { ...E7018, key: 'smaw-1g-butt', about: 'Groove with backing, flat: fusing both walls.', joint: 'butt', position: '1G', plate: 3 / 8, passes: 4, card: { ...lowHydrogen, work: [85, 95], note: 'Backing bar, 1/4 in root opening. Chip and brush every pass.' } },
  { ...E7018, key: 'smaw-3g-butt', about: 'Groove with backing, vertical up.', joint: 'butt', position: '3G', progression: 'up', plate: 3 / 8, passes: 4, card: { ...lowHydrogen, ...upward, work: [85, 95], note: 'Backing bar, 1/4 in root opening. Hold the sides, cross the middle.' } },
  { ...E7018, key: 'smaw-4g-butt', about: 'Groove with backing, overhead, in stringers.', joint: 'butt', position: '4G', plate: 3 / 8, passes: 6, card: { ...lowHydrogen, amps: [105, 130], work: [85, 95], note: 'Overhead: collar closed, cap on. Backing bar, 1/4 in root opening. Stringers.' } },
]

/** Covered electrodes, easiest first. */
export const smawLibrary: readonly LibraryExercise[] = plans.map(libraryExercise)

import { libraryExercise, type CardPlan, type LibraryExercise, type LibraryPlan } from './library-exercise'

const shortCircuit: CardPlan = {
  polarity: 'DCEP', amps: [120, 160], volts: [17.5, 19.5], feed: [210, 280], stickOut: [3 / 8, 1 / 2], travel: [12, 18], gas: 'M21', work: [40, 50], angle: [5, 15], direction: 'push',
  note: 'Gas on, no draft. Listen for an even crackle; a popping arc is too long.',
}
const spray: CardPlan = {
  ...shortCircuit, amps: [230, 280], volts: [25, 27.5], feed: [330, 400], stickOut: [1 / 2, 3 / 4], travel: [14, 22], note: 'Gas on, no draft. Spray arc: flat and horizontal only.',
}
const thin = { process: 'GMAW', rod: 'ER70S-6', size: 0.035, plate: 1 / 4, leg: 3 / 16 } as const
const thick = { process: 'GMAW', rod: 'ER70S-6', size: 0.045, plate: 3 / 8 } as const

const plans: readonly LibraryPlan[] = [
  { ...thin, key: 'gmaw-2f-lap', about: 'Short circuit on a horizontal lap.', joint: 'lap', position: '2F', card: shortCircuit },
  { ...thin, key: 'gmaw-2f-tee', about: 'Short circuit: fusion into the root of a tee.', joint: 'tee', position: '2F', card: shortCircuit },
  { ...thick, key: 'gmaw-1f-tee', about: 'Spray transfer, flat.', joint: 'tee', position: '1F', leg: 1 / 4, card: spray },
  { ...thin, key: 'gmaw-3f-lap', about: 'Vertical down: the arc on the leading edge.', joint: 'lap', position: '3F', progression: 'down', card: { ...shortCircuit, travel: [15, 22], note: 'Gas on, no draft. Downward runs cold: watch the fusion.' } },
  { ...thin, key: 'gmaw-3f-tee', about: 'Vertical up in short circuit.', joint: 'tee', position: '3F', progression: 'up', card: { ...shortCircuit, volts: [17, 18.5], feed: [180, 230], travel: [4, 7], angle: [0, 10], pause: [0.3, 0.7] } },
  { ...thin, key: 'gmaw-4f-lap', about: 'Overhead in short circuit.', joint: 'lap', position: '4F', card: { ...shortCircuit, volts: [17, 18.5], note: 'Gas on, no draft. Overhead: collar closed, cap on; clean the nozzle often.' } },
  { ...thick, key: 'gmaw-1g-butt', about: 'Groove with backing, flat, in spray.', joint: 'butt', position: '1G', passes: 4, card: { ...spray, work: [85, 95], note: 'Gas on, no draft. Backing bar, 1/4 in root opening.' } },
]

/** Solid wire under gas, easiest first. */
export const gmawLibrary: readonly LibraryExercise[] = plans.map(libraryExercise)

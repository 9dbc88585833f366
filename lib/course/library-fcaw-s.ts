import { libraryExercise, type CardPlan, type LibraryExercise, type LibraryPlan } from './library-exercise'

const small: CardPlan = {
  polarity: 'DCEN', amps: [120, 160], volts: [15.5, 17], feed: [80, 110], stickOut: [1 / 2, 3 / 4], travel: [9, 14], work: [40, 50], angle: [15, 25], direction: 'drag',
  note: 'No gas. Leads on DCEN before the first arc. Keep the wire on the leading edge of the puddle.',
}
const large: CardPlan = {
  polarity: 'DCEN', amps: [220, 280], volts: [19, 21], feed: [90, 120], stickOut: [3 / 4, 1], travel: [8, 13], work: [40, 50], angle: [15, 25], direction: 'drag',
  note: 'No gas. Fume extraction at the arc, not behind you. Chip and brush between passes.',
}
const E71T11 = { process: 'FCAW-S', rod: 'E71T-11', size: 0.045, plate: 1 / 4, leg: 3 / 16 } as const
const E71T8 = { process: 'FCAW-S', rod: 'E71T-8', size: 5 / 64 } as const

const plans: readonly LibraryPlan[] = [
  { ...E71T11, key: 'fcaw-s-1f-lap', about: 'First beads: stick-out and drag angle.', joint: 'lap', position: '1F', card: small },
  { ...E71T11, key: 'fcaw-s-2f-lap', about: 'Horizontal lap: melt the upper edge, not more.', joint: 'lap', position: '2F', card: small },
  { ...E71T8, key: 'fcaw-s-2f-tee', about: 'A larger wire with a long stick-out, equal legs.', joint: 'tee', position: '2F', plate: 1 / 2, leg: 5 / 16, card: large },
  { ...E71T11, key: 'fcaw-s-3f-lap', about: 'Vertical down: stay ahead of the slag.', joint: 'lap', position: '3F', progression: 'down', card: { ...small, volts: [15, 16.5], feed: [70, 95], travel: [12, 18], note: 'No gas. Stay ahead of the slag; if it runs past the arc, stop and chip.' } },
  { ...E71T11, key: 'fcaw-s-4f-lap', about: 'Overhead with a small wire.', joint: 'lap', position: '4F', card: { ...small, volts: [15, 16.5], feed: [70, 90], note: 'No gas. Overhead: collar closed, cap on; watch where the sparks fall.' } },
  { ...E71T8, key: 'fcaw-s-1g-butt', about: 'Groove with backing, flat: wash both walls.', joint: 'butt', position: '1G', plate: 3 / 8, passes: 4, card: { ...large, work: [85, 95], pause: [0.3, 0.8], note: 'No gas. Backing bar, 1/4 in root opening. Wash both walls.' } },
  { ...E71T8, key: 'fcaw-s-2g-butt', about: 'Groove with backing, horizontal, in stringers.', joint: 'butt', position: '2G', plate: 3 / 8, passes: 6, card: { ...large, volts: [18.5, 20], feed: [85, 110], work: [80, 100], note: 'No gas. Backing bar, 1/4 in root opening. Stringers, bottom to top.' } },
]

/** Self-shielded flux-cored wire, easiest first. */
export const fcawSLibrary: readonly LibraryExercise[] = plans.map(libraryExercise)

import { libraryExercise, type CardPlan, type LibraryExercise, type LibraryPlan } from './library-exercise'

const base: CardPlan = {
  polarity: 'DCEP', amps: [190, 240], volts: [25, 27.5], feed: [280, 360], stickOut: [3 / 4, 1], travel: [10, 16], gas: 'M21', work: [40, 50], angle: [5, 15], direction: 'drag',
  note: 'Gas on, no draft in the booth.',
}
const upward = { amps: [150, 190], volts: [23, 25], feed: [200, 260], travel: [4, 7], angle: [0, 10], direction: 'push', pause: [0.3, 0.7] } as const
const mixed = { process: 'FCAW-G', rod: 'E71T-1M', size: 0.045, plate: 3 / 8 } as const

const plans: readonly LibraryPlan[] = [
  { ...mixed, key: 'fcaw-g-1f-tee', about: 'First beads under gas: travel and stick-out.', joint: 'tee', position: '1F', leg: 1 / 4, card: base },
  { ...mixed, key: 'fcaw-g-2f-lap', about: 'Horizontal lap at a steady travel.', joint: 'lap', position: '2F', leg: 1 / 4, card: base },
  { ...mixed, rod: 'E71T-1C', key: 'fcaw-g-2f-tee', about: 'The same under carbon dioxide: a hotter arc, more spatter.', joint: 'tee', position: '2F', leg: 1 / 4, card: { ...base, gas: 'C1', volts: [26, 28.5] } },
  { ...mixed, key: 'fcaw-g-3f-tee', about: 'Vertical up: a triangle into the root.', joint: 'tee', position: '3F', progression: 'up', leg: 5 / 16, card: { ...base, ...upward, note: 'Gas on, no draft. A triangle, not a zigzag: into the root, out to each side.' } },
  { ...mixed, key: 'fcaw-g-4f-tee', about: 'Overhead fillet.', joint: 'tee', position: '4F', leg: 1 / 4, card: { ...base, ...upward, travel: [8, 12], direction: 'drag', note: 'Gas on, no draft. Overhead: collar closed, cap on; clean the nozzle often.' } },
  { ...mixed, key: 'fcaw-g-2g-butt', about: 'Groove with backing, horizontal, in stringers.', joint: 'butt', position: '2G', passes: 6, card: { ...base, work: [80, 100], note: 'Gas on, no draft. Backing bar, 1/4 in root opening. Stringers, bottom to top.' } },
  { ...mixed, key: 'fcaw-g-3g-butt', about: 'Groove with backing, vertical up.', joint: 'butt', position: '3G', progression: 'up', passes: 4, card: { ...base, ...upward, work: [85, 95], note: 'Gas on, no draft. Backing bar, 1/4 in root opening.' } },
]

/** Gas-shielded flux-cored wire, easiest first. */
export const fcawGLibrary: readonly LibraryExercise[] = plans.map(libraryExercise)

import type { CardInput } from './booth-cards'
import { fillet, groove, type ExercisePlan } from './exercise-plan'

const base: CardInput = {
  polarity: 'DCEP', amps: [190, 240], volts: [25, 27.5], wireFeed: [280, 360], stickOut: [3 / 4, 1], travel: [10, 16], gas: 'M21',
  workAngle: [40, 50], travelAngle: [5, 15], direction: 'drag', note: 'Gas on, no draft in the booth. Spray inside the nozzle, not on the plate.',
}
const vertical = { amps: [150, 190], volts: [23, 25], wireFeed: [200, 260], travel: [4, 7], travelAngle: [0, 10], direction: 'push', pause: [0.3, 0.7] } as const
const carbonDioxide = { gas: 'C1', volts: [26, 28.5] } as const

const wire45 = { electrode: 'E71T-1M', wire: 0.045 } as const

export const fcawG: readonly ExercisePlan[] = [
  fillet('FCAW-G', {
    key: 'fcaw-g-1f-lap', opensAfter: null, difficulty: 0, electrode: 'E70T-1M', wire: 1 / 16, joint: 'lap', position: '1F', plate: 3 / 8, leg: 3 / 16,
    length: 6, passes: 1, stations: 6, gauge: 'in64', judgedBy: 'shop-bead', card: { ...base, amps: [230, 290], wireFeed: [170, 230], travel: [16, 24] },
  }),
  fillet('FCAW-G', {
    key: 'fcaw-g-2f-lap', opensAfter: 'fcaw-g-1f-lap', difficulty: 0.1, ...wire45, joint: 'lap', position: '2F', plate: 3 / 8, leg: 1 / 4,
    length: 6, passes: 1, stations: 6, judgedBy: 'structural-static.us', card: base,
  }),
  fillet('FCAW-G', {
    key: 'fcaw-g-2f-tee', opensAfter: 'fcaw-g-2f-lap', difficulty: 0.15, electrode: 'E71T-1C', wire: 0.045, joint: 'tee', position: '2F', plate: 3 / 8, leg: 1 / 4,
    length: 6, passes: 1, stations: 6, judgedBy: 'structural-static.us', card: { ...base, ...carbonDioxide },
  }),
  fillet('FCAW-G', {
    key: 'fcaw-g-1f-tee', opensAfter: 'fcaw-g-1f-lap', difficulty: 0.05, electrode: 'E70T-1C', wire: 1 / 16, joint: 'tee', position: '1F', plate: 1 / 2, leg: 5 / 16,
    length: 8, passes: 1, stations: 8, judgedBy: 'structural-static.us', card: { ...base, ...carbonDioxide, amps: [260, 330], wireFeed: [200, 270] },
  }),
  fillet('FCAW-G', {
    key: 'fcaw-g-2f-corner', opensAfter: 'fcaw-g-2f-lap', difficulty: 0.2, electrode: 'E71T-1M', wire: 0.052, joint: 'corner', position: '2F', plate: 3 / 8, leg: 1 / 4,
    length: 6, passes: 1, stations: 6, judgedBy: 'structural-static.us', card: { ...base, wireFeed: [210, 270] },
  }),
  fillet('FCAW-G', {
    key: 'fcaw-g-3f-lap', opensAfter: 'fcaw-g-2f-tee', difficulty: 0.3, ...wire45, joint: 'lap', position: '3F', progression: 'up', plate: 3 / 8, leg: 1 / 4,
    length: 6, passes: 1, stations: 6, judgedBy: 'structural-static.us', card: { ...base, ...vertical },
  }),
  fillet('FCAW-G', {
    key: 'fcaw-g-3f-tee', opensAfter: 'fcaw-g-3f-lap', difficulty: 0.35, ...wire45, joint: 'tee', position: '3F', progression: 'up', plate: 3 / 8, leg: 5 / 16,
    length: 6, passes: 1, stations: 6, judgedBy: 'structural-static.us', card: { ...base, ...vertical, note: 'A triangle, not a zigzag: into the root, out to each side.' },
  }),
  fillet('FCAW-G', {
    key: 'fcaw-g-4f-tee', opensAfter: 'fcaw-g-3f-lap', difficulty: 0.5, ...wire45, joint: 'tee', position: '4F', plate: 3 / 8, leg: 1 / 4,
    length: 6, passes: 1, stations: 6, judgedBy: 'structural-static.us', card: { ...base, ...vertical, travel: [8, 12], direction: 'drag' },
  }),
  groove('FCAW-G', {
    key: 'fcaw-g-2g-butt', opensAfter: 'fcaw-g-2f-tee', difficulty: 0.3, ...wire45, joint: 'butt', position: '2G', plate: 3 / 8,
    length: 8, passes: 6, stations: 8, judgedBy: 'qualification-visual.us', card: { ...base, workAngle: [80, 100], note: 'Backing bar, 1/4 in root opening. Stringers, bottom to top.' },
  }),
  groove('FCAW-G', {
    key: 'fcaw-g-3g-butt', opensAfter: 'fcaw-g-3f-tee', difficulty: 0.4, ...wire45, joint: 'butt', position: '3G', progression: 'up', plate: 3 / 8,
    length: 8, passes: 4, stations: 8, judgedBy: 'qualification-visual.us', card: { ...base, ...vertical, workAngle: [85, 95] },
  }),
]

import type { CardInput } from './booth-cards'
import { fillet, groove, type ExercisePlan } from './exercise-plan'

const lowHydrogen: CardInput = {
  polarity: 'DCEP', amps: [110, 145], travel: [5, 9], workAngle: [40, 50], travelAngle: [5, 15], direction: 'drag',
  note: 'Rods straight from the oven. Hold the arc no longer than the rod is thick.',
}
const cellulose: CardInput = {
  polarity: 'DCEP', amps: [75, 110], travel: [6, 11], workAngle: [40, 50], travelAngle: [5, 15], direction: 'drag', note: 'Step ahead and back: freeze the puddle before you fill it.',
}
const upward = { amps: [105, 130], travel: [3, 5], travelAngle: [0, 10], direction: 'push', pause: [0.4, 0.9] } as const

const E7018 = { electrode: 'E7018', wire: 1 / 8 } as const

export const smaw: readonly ExercisePlan[] = [
  groove('SMAW', {
    key: 'smaw-1g-butt-cover', opensAfter: null, difficulty: 0, ...E7018, joint: 'butt', position: '1G', plate: 3 / 8, length: 6, passes: 3, stations: 6,
    judgedBy: 'shop-bead', card: { ...lowHydrogen, workAngle: [85, 95], pause: [0.3, 0.7], note: 'The cover pass is the exercise: weave it straight and even.' },
  }),
  fillet('SMAW', {
    key: 'smaw-2f-lap', opensAfter: 'smaw-1g-butt-cover', difficulty: 0.05, electrode: 'E7018', wire: 3 / 32, joint: 'lap', position: '2F', plate: 3 / 8, leg: 5 / 16,
    length: 6, passes: 3, stations: 6, judgedBy: 'shop-bead', card: { ...lowHydrogen, amps: [75, 100] },
  }),
  fillet('SMAW', {
    key: 'smaw-2f-tee', opensAfter: 'smaw-2f-lap', difficulty: 0.1, ...E7018, joint: 'tee', position: '2F', plate: 3 / 8, leg: 1 / 4,
    length: 6, passes: 1, stations: 6, judgedBy: 'structural-static.us', card: lowHydrogen,
  }),
  fillet('SMAW', {
    key: 'smaw-1f-tee', opensAfter: 'smaw-1g-butt-cover', difficulty: 0, electrode: 'E7024', wire: 5 / 32, joint: 'tee', position: '1F', plate: 1 / 2, leg: 5 / 16,
    length: 8, passes: 1, stations: 8, judgedBy: 'structural-static.us',
    card: { ...lowHydrogen, polarity: 'DCEN', amps: [180, 220], travel: [8, 12], note: 'Let the coating touch the plate and drag it.' },
  }),
  fillet('SMAW', {
    key: 'smaw-1f-corner', opensAfter: 'smaw-1g-butt-cover', difficulty: 0.15, electrode: 'E6011', wire: 1 / 8, joint: 'corner', position: '1F', plate: 1 / 4, leg: 3 / 16,
    length: 6, passes: 1, stations: 6, judgedBy: 'structural-static.us', card: cellulose,
  }),
  fillet('SMAW', {
    key: 'smaw-3f-lap', opensAfter: 'smaw-2f-tee', difficulty: 0.35, ...E7018, joint: 'lap', position: '3F', progression: 'up', plate: 3 / 8, leg: 1 / 4,
    length: 6, passes: 1, stations: 6, judgedBy: 'structural-static.us', card: { ...lowHydrogen, ...upward },
  }),
  fillet('SMAW', {
    key: 'smaw-3f-tee', opensAfter: 'smaw-3f-lap', difficulty: 0.4, ...E7018, joint: 'tee', position: '3F', progression: 'up', plate: 3 / 8, leg: 5 / 16,
    length: 6, passes: 2, stations: 6, judgedBy: 'structural-static.us', card: { ...lowHydrogen, ...upward },
  }),
  fillet('SMAW', {
    key: 'smaw-4f-lap', opensAfter: 'smaw-3f-lap', difficulty: 0.5, ...E7018, joint: 'lap', position: '4F', plate: 3 / 8, leg: 1 / 4,
    length: 6, passes: 1, stations: 6, judgedBy: 'structural-static.us',
    card: { ...lowHydrogen, amps: [105, 130], note: 'Overhead: collar closed, cap on. Shortest arc you can hold.' },
  }),
  groove('SMAW', {
    key: 'smaw-2g-butt', opensAfter: 'smaw-2f-tee', difficulty: 0.3, ...E7018, joint: 'butt', position: '2G', plate: 3 / 8,
    length: 8, passes: 7, stations: 8, judgedBy: 'qualification-visual.us',
    card: { ...lowHydrogen, workAngle: [80, 100], note: 'Backing bar, 1/4 in root opening. Stringers; grind nothing, chip everything.' },
  }),
  groove('SMAW', {
    key: 'smaw-3g-butt', opensAfter: 'smaw-3f-tee', difficulty: 0.45, ...E7018, joint: 'butt', position: '3G', progression: 'up', plate: 3 / 8,
    length: 8, passes: 4, stations: 8, judgedBy: 'qualification-visual.us', card: { ...lowHydrogen, ...upward, workAngle: [85, 95] },
  }),
]

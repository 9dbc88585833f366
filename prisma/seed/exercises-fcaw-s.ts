import type { CardInput } from './booth-cards'
import { fillet, groove, type ExercisePlan } from './exercise-plan'

/** The exercise that shows the whole way of a coupon; the course of the people in KNOWN turns about it. */
export const SHOWCASE = 'fcaw-s-2f-lap'

const small: CardInput = {
  polarity: 'DCEN', amps: [120, 160], volts: [15.5, 17], wireFeed: [80, 110], stickOut: [1 / 2, 3 / 4], travel: [9, 14],
  workAngle: [40, 50], travelAngle: [15, 25], direction: 'drag',
  note: 'Check that the leads are on DCEN before the first arc. Keep the wire on the leading edge of the puddle.',
}
const middle: CardInput = {
  polarity: 'DCEN', amps: [150, 200], volts: [16.5, 18.5], wireFeed: [70, 100], stickOut: [5 / 8, 1], travel: [9, 14],
  workAngle: [40, 50], travelAngle: [15, 25], direction: 'drag', note: 'A longer stick-out than it feels: measure it before you strike.',
}
const large: CardInput = {
  polarity: 'DCEN', amps: [220, 280], volts: [19, 21], wireFeed: [90, 120], stickOut: [3 / 4, 1], travel: [8, 13],
  workAngle: [40, 50], travelAngle: [15, 25], direction: 'drag', note: 'Fume extraction at the arc, not behind you. Chip and brush between passes.',
}
const grooved = { workAngle: [85, 95], pause: [0.3, 0.8] } as const

const E71T11 = { electrode: 'E71T-11', wire: 0.045 } as const
const E71T8 = { electrode: 'E71T-8', wire: 5 / 64 } as const

export const fcawS: readonly ExercisePlan[] = [
  fillet('FCAW-S', {
    key: 'fcaw-s-1f-lap', opensAfter: null, difficulty: 0, electrode: 'E71T-11', wire: 1 / 16, joint: 'lap', position: '1F', plate: 3 / 8, leg: 3 / 16,
    length: 6, passes: 1, stations: 6, gauge: 'in64', judgedBy: 'shop-bead', card: middle,
  }),
  fillet('FCAW-S', {
    key: SHOWCASE, opensAfter: 'fcaw-s-1f-lap', difficulty: 0.1, ...E71T11, joint: 'lap', position: '2F', plate: 3 / 8, leg: 1 / 4,
    length: 6, passes: 1, stations: 6, judgedBy: 'structural-static.us', card: { ...small, volts: [16, 17.5], wireFeed: [90, 120] },
  }),
  fillet('FCAW-S', {
    key: 'fcaw-s-1f-tee', opensAfter: 'fcaw-s-1f-lap', difficulty: 0.1, ...E71T8, joint: 'tee', position: '1F', plate: 3 / 8,
    leg: 1 / 4, length: 6, passes: 1, stations: 6, judgedBy: 'shop-bead', gauge: 'in64', card: { ...large, travel: [12, 18] },
  }),
  fillet('FCAW-S', {
    key: 'fcaw-s-2f-tee', opensAfter: SHOWCASE, difficulty: 0.2, ...E71T8, joint: 'tee', position: '2F', plate: 1 / 2, leg: 5 / 16,
    length: 8, passes: 1, stations: 8, judgedBy: 'structural-static.us', card: large,
  }),
  fillet('FCAW-S', {
    key: 'fcaw-s-2f-corner', opensAfter: SHOWCASE, difficulty: 0.2, ...E71T11, joint: 'corner', position: '2F', plate: 1 / 4, leg: 3 / 16,
    length: 6, passes: 1, stations: 6, judgedBy: 'structural-static.us', card: { ...small, volts: [15.5, 16.5], wireFeed: [75, 100] },
  }),
  fillet('FCAW-S', {
    key: 'fcaw-s-3f-lap', opensAfter: SHOWCASE, difficulty: 0.35, ...E71T11, joint: 'lap', position: '3F', progression: 'down', plate: 1 / 4, leg: 3 / 16,
    length: 6, passes: 1, stations: 6, judgedBy: 'structural-static.us',
    card: { ...small, volts: [15, 16.5], wireFeed: [70, 95], travel: [12, 18], note: 'Downward: stay ahead of the slag. If it runs past the arc, stop and chip.' },
  }),
  fillet('FCAW-S', {
    key: 'fcaw-s-4f-lap', opensAfter: 'fcaw-s-3f-lap', difficulty: 0.5, ...E71T11, joint: 'lap', position: '4F', plate: 1 / 4, leg: 3 / 16,
    length: 6, passes: 1, stations: 6, judgedBy: 'structural-static.us',
    card: { ...small, volts: [15, 16.5], wireFeed: [70, 90], note: 'Overhead: collar closed, cap on, watch where the sparks fall.' },
  }),
  groove('FCAW-S', {
    key: 'fcaw-s-1g-butt', opensAfter: 'fcaw-s-2f-tee', difficulty: 0.2, ...E71T8, joint: 'butt', position: '1G', plate: 3 / 8,
    length: 8, passes: 4, stations: 8, judgedBy: 'qualification-visual.us', card: { ...large, ...grooved, note: 'Backing bar, 1/4 in root opening. Wash both walls.' },
  }),
  groove('FCAW-S', {
    key: 'fcaw-s-2g-butt', opensAfter: 'fcaw-s-1g-butt', difficulty: 0.35, ...E71T8, joint: 'butt', position: '2G', plate: 3 / 8,
    length: 8, passes: 6, stations: 8, judgedBy: 'qualification-visual.us',
    card: { ...large, volts: [18.5, 20], wireFeed: [85, 110], workAngle: [80, 100], note: 'Stringers, bottom to top. Each one half over the one below.' },
  }),
  groove('FCAW-S', {
    key: 'fcaw-s-3g-butt', opensAfter: 'fcaw-s-2g-butt', difficulty: 0.45, ...E71T8, joint: 'butt', position: '3G', progression: 'up', plate: 3 / 8,
    length: 8, passes: 4, stations: 8, judgedBy: 'qualification-visual.us',
    card: {
      ...large, amps: [180, 230], volts: [18, 19.5], wireFeed: [75, 95], travel: [3, 6], ...grooved, travelAngle: [0, 10],
      note: 'Upward: pause at the sides, hurry across the middle.',
    },
  }),
]

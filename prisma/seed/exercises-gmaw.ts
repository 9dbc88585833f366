import type { CardInput } from './booth-cards'
import { fillet, groove, type ExercisePlan } from './exercise-plan'

const shortCircuit: CardInput = {
  polarity: 'DCEP', amps: [120, 160], volts: [17.5, 19.5], wireFeed: [210, 280], stickOut: [3 / 8, 1 / 2], travel: [12, 18], gas: 'M21',
  workAngle: [40, 50], travelAngle: [5, 15], direction: 'push', note: 'Listen for an even crackle. A popping arc is too long.',
}
const spray: CardInput = {
  ...shortCircuit, amps: [230, 280], volts: [25, 27.5], wireFeed: [330, 400], stickOut: [1 / 2, 3 / 4], travel: [14, 22], note: 'Spray arc: flat and horizontal only. No crackle should be heard.',
}
const upward = { volts: [17, 18.5], wireFeed: [180, 230], travel: [4, 7], travelAngle: [0, 10], pause: [0.3, 0.7] } as const

const wire35 = { electrode: 'ER70S-6', wire: 0.035 } as const

// The first bead opens nothing: the shop rule's band for this wire is so narrow that the model seldom calls anyone ready in it.
export const gmaw: readonly ExercisePlan[] = [
  fillet('GMAW', {
    key: 'gmaw-1f-lap', opensAfter: null, difficulty: 0, electrode: 'ER70S-6', wire: 0.045, joint: 'lap', position: '1F', plate: 1 / 4, leg: 5 / 32,
    length: 6, passes: 1, stations: 6, gauge: 'in64', judgedBy: 'shop-bead', card: { ...shortCircuit, wireFeed: [160, 220] },
  }),
  fillet('GMAW', {
    key: 'gmaw-2f-lap', opensAfter: null, difficulty: 0.1, ...wire35, joint: 'lap', position: '2F', plate: 1 / 4, leg: 3 / 16,
    length: 6, passes: 1, stations: 6, judgedBy: 'structural-static.us', card: shortCircuit,
    cardBefore: { ...shortCircuit, volts: [17, 18.5], wireFeed: [190, 250] },
  }),
  fillet('GMAW', {
    key: 'gmaw-2f-tee', opensAfter: 'gmaw-2f-lap', difficulty: 0.15, ...wire35, joint: 'tee', position: '2F', plate: 1 / 4, leg: 3 / 16,
    length: 6, passes: 1, stations: 6, judgedBy: 'structural-static.us', card: shortCircuit,
  }),
  fillet('GMAW', {
    key: 'gmaw-1f-tee', opensAfter: 'gmaw-2f-lap', difficulty: 0.05, electrode: 'ER70S-6', wire: 0.045, joint: 'tee', position: '1F', plate: 3 / 8, leg: 1 / 4,
    length: 6, passes: 1, stations: 6, judgedBy: 'structural-static.us', card: spray,
  }),
  fillet('GMAW', {
    key: 'gmaw-1f-corner', opensAfter: 'gmaw-2f-lap', difficulty: 0.15, ...wire35, joint: 'corner', position: '1F', plate: 1 / 4, leg: 3 / 16,
    length: 6, passes: 1, stations: 6, judgedBy: 'structural-static.us', card: shortCircuit,
  }),
  fillet('GMAW', {
    key: 'gmaw-3f-lap', opensAfter: 'gmaw-2f-tee', difficulty: 0.25, ...wire35, joint: 'lap', position: '3F', progression: 'down', plate: 1 / 4, leg: 3 / 16,
    length: 6, passes: 1, stations: 6, judgedBy: 'structural-static.us',
    card: { ...shortCircuit, travel: [15, 22], note: 'Downward runs cold: keep the arc on the leading edge and watch the fusion.' },
  }),
  fillet('GMAW', {
    key: 'gmaw-3f-tee', opensAfter: 'gmaw-3f-lap', difficulty: 0.4, ...wire35, joint: 'tee', position: '3F', progression: 'up', plate: 1 / 4, leg: 3 / 16,
    length: 6, passes: 1, stations: 6, judgedBy: 'structural-static.us', card: { ...shortCircuit, ...upward },
  }),
  groove('GMAW', {
    key: 'gmaw-1g-butt', opensAfter: 'gmaw-1f-tee', difficulty: 0.15, electrode: 'E70C-6M', wire: 0.045, joint: 'butt', position: '1G', plate: 3 / 8,
    length: 8, passes: 4, stations: 8, judgedBy: 'qualification-visual.us', card: { ...spray, workAngle: [85, 95], note: 'Metal-cored wire in spray. Backing bar, 1/4 in root opening.' },
  }),
  groove('GMAW', {
    key: 'gmaw-2g-butt', opensAfter: 'gmaw-1g-butt', difficulty: 0.3, electrode: 'ER70S-6', wire: 0.045, joint: 'butt', position: '2G', plate: 3 / 8,
    length: 8, passes: 6, stations: 8, judgedBy: 'qualification-visual.us', card: { ...spray, workAngle: [80, 100], note: 'Stringers, bottom to top; pause on the upper wall.' },
  }),
]

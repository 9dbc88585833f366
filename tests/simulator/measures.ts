/**
 * What is measured on a made-up 8 mm fillet, in millimetres of deviation from the bead one aims at. Invented for the simulator;
 * the filter knows none of it but the margins.
 */
export type Measure = {
  readonly name: string
  /** Deviation allowed. */
  readonly limit: number
  /** `over`: only too much counts. `either`: too much and too little. `depth`: never below 0, like undercut. */
  readonly side: 'over' | 'either' | 'depth'
  /** Deviation and spread of a beginner and of a practised hand. */
  readonly bias: { readonly first: number; readonly settled: number }
  readonly spread: { readonly first: number; readonly settled: number }
  /** Divides margins so that the worst one varies by 0.3 to 0.4 from bead to bead. */
  readonly scale: number
}

export const MEASURES: readonly Measure[] = [
  { name: 'short leg', limit: 1.2, side: 'over', bias: { first: 0.9, settled: -0.3 }, spread: { first: 0.7, settled: 0.3 }, scale: 1 },
  { name: 'leg balance', limit: 1.6, side: 'either', bias: { first: 1.3, settled: 0.2 }, spread: { first: 0.8, settled: 0.32 }, scale: 1 },
  { name: 'width', limit: 1.5, side: 'either', bias: { first: 0.9, settled: 0.1 }, spread: { first: 0.8, settled: 0.35 }, scale: 1 },
  { name: 'convexity', limit: 1.4, side: 'over', bias: { first: 0.7, settled: -0.1 }, spread: { first: 0.6, settled: 0.25 }, scale: 1 },
  { name: 'undercut', limit: 0.8, side: 'depth', bias: { first: 0.3, settled: -0.35 }, spread: { first: 0.4, settled: 0.2 }, scale: 0.6 },
]

/** Yes/no things: the chance that each goes wrong for a beginner and for a practised hand. */
export const FAULTS = [
  { name: 'crater left open', first: 0.3, settled: 0.02 },
  { name: 'lack of fusion', first: 0.15, settled: 0.01 },
] as const

export const STATIONS = 5

/** How far inside its limit a deviation is. */
export function marginOf({ limit, side }: Measure, deviation: number): number {
  if (side === 'over') return limit - deviation
  return limit - (side === 'either' ? Math.abs(deviation) : Math.max(0, deviation))
}

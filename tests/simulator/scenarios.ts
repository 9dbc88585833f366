import type { Grading } from './grader'
import type { Forgetting, Kind } from './student'

/** One kind of class. `tighter`: every limit is tightened by this much, in scales. `dayToDay`: sd of the log of a day's strain. */
export type Scenario = {
  readonly name: string
  readonly kinds: readonly (readonly [Kind, number])[]
  readonly grading: Grading
  readonly forgetting: Forgetting
  /** Chance that a gap between days is a break of 10 to 45 days. */
  readonly breaks: number
  readonly dayToDay: number
  readonly tighter: number
}

const GRADING: Grading = { graders: 6, harshness: 0, disagreement: 0.08, noise: 0.08, slips: 0.02, gaps: 0.1, marginsKnown: true }

export const BASE: Scenario = {
  name: 'base',
  kinds: [['steady', 0.4], ['plateau', 0.25], ['step', 0.2], ['slow', 0.15]],
  grading: GRADING,
  forgetting: { share: 0.5, days: 60 },
  breaks: 0.06,
  dayToDay: 0.15,
  tighter: 0,
}

export const SCENARIOS: readonly Scenario[] = [
  BASE,
  { ...BASE, name: 'pass/fail only', grading: { ...GRADING, marginsKnown: false } },
  { ...BASE, name: 'noisy, harsh graders', grading: { ...GRADING, harshness: 0.15, disagreement: 0.15, noise: 0.18, slips: 0.06 } },
  { ...BASE, name: 'strong forgetting', forgetting: { share: 0.9, days: 15 }, breaks: 0.15 },
  { ...BASE, name: 'mostly plateau', kinds: [['plateau', 0.7], ['steady', 0.15], ['step', 0.1], ['slow', 0.05]] },
  { ...BASE, name: 'harder limits', tighter: 0.35 },
]

import { SHOWCASE } from './exercises-fcaw-s'
import type { Learner } from './learner'
import { KNOWN } from './people'

/** What a student in KNOWN has done, whatever chance does with the others. */
export type SetCourse = {
  /** How many evenings before tonight they joined; in the small school no earlier than its first evening. */
  readonly evenings: number
  /** Exercises welded before tonight, one coupon each, in order. */
  readonly coupons: readonly string[]
  readonly tonight: string
  readonly learner: Partial<Learner>
}

const FIRST = 'fcaw-s-1f-lap'
const times = (key: string, count: number): string[] => Array.from({ length: count }, () => key)

export const SET_COURSES: Readonly<Record<string, SetCourse>> = {
  [KNOWN.withEstimate]: { evenings: 6, coupons: [...times(FIRST, 5), ...times(SHOWCASE, 10)], tonight: SHOWCASE, learner: { start: -0.7, ceiling: 1.1, pace: 4, knotUntil: 0 } },
  [KNOWN.withFew]: { evenings: 4, coupons: [...times(FIRST, 8), ...times(SHOWCASE, 3)], tonight: FIRST, learner: { start: 0.1, ceiling: 1.2, knotUntil: 0 } },
  [KNOWN.beforeCautions]: { evenings: 3, coupons: times(FIRST, 9), tonight: FIRST, learner: { start: 0.6, ceiling: 1.6, knotUntil: 0 } },
}

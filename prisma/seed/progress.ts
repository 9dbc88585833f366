import { MODEL_VERSION } from '@/lib/readiness/parameters'
import { couponOf } from '@/lib/readiness/coupons-from-records'
import { absorbCoupon, readinessOf, startState, type FilterState } from '@/lib/readiness/incremental'
import type { Verdict } from '@/lib/scoring/types'
import type { Dice } from './dice'
import type { ExercisePlan } from './exercise-plan'
import { criteriaOf, type Inspected } from './inspect'
import { levelOf, rest, type Learner, type Memory } from './learner'

/** One student's way in one exercise. */
export type Progress = {
  readonly exercise: ExercisePlan
  readonly memory: Memory
  coupons: number
  /** The instructor's, oldest first. */
  readonly verdicts: Verdict[]
  /** What the readiness model knows, coupon by coupon. */
  state: FilterState
  passed: boolean
  /** They have gone on to the next exercise; they may still come back to this one. */
  doneWith: boolean
  /** Coupons there were when a test failed last. */
  failedAt: number | null
}

export const begin = (exercise: ExercisePlan): Progress => ({
  exercise, memory: { practice: 0, rust: 0, lastDay: null }, coupons: 0, verdicts: [], state: startState(), passed: false, doneWith: false, failedAt: null,
})

/** The student's level in an exercise tonight, after what a pause has undone. */
export function levelTonight(progress: Progress, all: Iterable<Progress>, learner: Learner, day: number): number {
  const { memory, exercise } = progress
  rest(memory, day, learner)
  let carriedOver = 0
  for (const other of all) {
    if (other !== progress) carriedOver += other.memory.practice * (other.exercise.process === exercise.process ? 1 : 0.5)
  }
  return levelOf(learner, memory, exercise.difficulty, carriedOver)
}

/** What an instructor's inspection adds: to the record, and to what the readiness model knows. */
export function learnVerdict(progress: Progress, day: number, { judged }: Inspected): void {
  const { scorecard } = judged
  progress.verdicts.push(scorecard.verdict)
  const evidence = couponOf(day, { by: 'instructor', scorecard, criteria: criteriaOf(progress.exercise) }, 1)
  if (evidence) progress.state = absorbCoupon(progress.state, evidence.coupon)
}

/** The chance of passing a test today as the model says it uncalibrated, and the model's name. */
export const forecastOf = (progress: Progress, day: number): { forecast: number; modelVersion: string } =>
  ({ forecast: readinessOf(progress.state, day).probability, modelVersion: MODEL_VERSION })

/** Whether a student has gone on to the next exercise by tonight: mostly accepted of late, or long enough at it. */
export function movesOn(progress: Progress, dice: Dice): boolean {
  const { coupons, verdicts } = progress
  const good = verdicts.slice(-4).filter((verdict) => verdict === 'accept').length
  progress.doneWith ||= coupons >= 14 || (coupons >= 6 && good >= 3 && dice.chance(0.5))
  return progress.doneWith
}

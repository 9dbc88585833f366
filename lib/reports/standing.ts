import { learn } from '../language/learn'
import { say, type Locale } from '../language/say'
import type { Advice } from '../readiness/decide'
import { chanceText } from './readiness-track'

/** What a skill summary knows of one student in one exercise. */
export type SkillFigures = {
  readonly couponCount: number
  readonly inspectedCount: number
  readonly acceptedCount: number
  readonly waitingCount: number
  readonly probability: number | null
  readonly low: number | null
  readonly high: number | null
  readonly advice: Advice | null
  readonly couponsUsed: number
}

/** One cell of a board or map: shade, figure, and what a screen reader says. */
export type Standing = {
  readonly probability: number | null
  readonly text: string
  readonly spoken: string
  readonly adviceText: string | null
}

/** Where a student stands in an exercise, in the reader's words; `minimumCoupons` is the program's. */
export function standing(skill: SkillFigures | undefined, minimumCoupons: number, locale: Locale): Standing {
  if (!skill || skill.couponCount === 0) return { probability: null, text: '', spoken: say(learn, locale, 'notStarted'), adviceText: null }
  const { probability, low, high } = skill
  if (probability === null || low === null || high === null) {
    const counts = { have: skill.couponsUsed, need: minimumCoupons }
    return { probability: null, text: say(learn, locale, 'tooFew', counts), spoken: say(learn, locale, 'tooFewSpoken', counts), adviceText: null }
  }
  return {
    probability,
    text: chanceText(probability),
    spoken: say(learn, locale, 'chanceSpoken', { chance: chanceText(probability), low: chanceText(low), high: chanceText(high) }),
    adviceText: skill.advice ? say(learn, locale, skill.advice) : null,
  }
}

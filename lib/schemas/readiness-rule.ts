import * as z from 'zod'
import { program } from '../language/program'
import { say } from '../language/say'
import type { Reader } from './field'

/** What a coordinator may choose. Below and above, the rule would suggest a test to nobody or to everybody. */
export const RULE_LIMITS = {
  threshold: { least: 0.3, most: 0.95 },
  minimumCoupons: { least: 3, most: 30 },
  staleAfterDays: { least: 7, most: 365 },
} as const

const DECIMAL = /^(?:0|1)?[.,]\d{1,3}$/
const WHOLE = /^\d{1,4}$/

/** When a test is suggested, as typed into the form: '0.65', '.65' or '0,65', and two whole numbers. */
export function readinessRuleSchema({ locale }: Pick<Reader, 'locale'>) {
  const number = (key: keyof typeof RULE_LIMITS, form: RegExp, wrong: 'thresholdWrong' | 'wholeWrong') => {
    const { least, most } = RULE_LIMITS[key]
    return z.string().transform((text, context): number => {
      const typed = text.trim()
      const value = form.test(typed) ? Number(typed.replace(',', '.')) : Number.NaN
      if (value >= least && value <= most) return value
      context.addIssue({ code: 'custom', message: say(program, locale, wrong, { typed: typed.slice(0, 40), least: chance(least), most: chance(most) }) })
      return z.NEVER
    })
  }
  return z.strictObject({
    readinessThreshold: number('threshold', DECIMAL, 'thresholdWrong'),
    minimumCoupons: number('minimumCoupons', WHOLE, 'wholeWrong'),
    staleAfterDays: number('staleAfterDays', WHOLE, 'wholeWrong'),
  })
}

/** Chances keep two decimals, counts have none. */
const chance = (limit: number): string => (Number.isInteger(limit) ? String(limit) : limit.toFixed(2))

import { readiness } from '../language/readiness'
import { say, type Locale } from '../language/say'
import type { Assessment } from '../readiness/assess'
import type { Advice, ReasonCode } from '../readiness/decide'
import type { ReadinessExplanation } from '../readiness/explain'
import type { SelfTrust } from '../readiness/self-trust'
import type { WideBecause } from '../readiness/why-wide'
import { chanceText } from './readiness-track'

/** The estimate, or that there are not enough coupons yet and how many more it takes. */
export function explainAssessment(assessment: Assessment, locale: Locale): string {
  if (assessment.kind === 'insufficient') {
    const { have, need } = assessment
    const more = need - have
    return `${say(readiness, locale, 'notEnough', { have, need })} ${more === 1 ? say(readiness, locale, 'oneMore') : say(readiness, locale, 'someMore', { more })}`
  }
  const { probability, low, high, couponsUsed } = assessment
  return say(readiness, locale, 'estimate', { chance: chanceText(probability), low: chanceText(low), high: chanceText(high), coupons: couponsUsed })
}

export function explainAdvice(advice: Advice, locale: Locale): string {
  return say(readiness, locale, `advice-${advice}`)
}

/** One sentence per reason. `threshold` is the program's. */
export function explainReason(code: ReasonCode, threshold: number, locale: Locale): string {
  return say(readiness, locale, code, { threshold: chanceText(threshold) })
}

/** The words a screen or a sheet of paper shows under the estimate. `nameOfRule` puts a rule's id into the reader's words. */
export type ExplainedReadiness = { readonly holdsBack: string; readonly afterMore: readonly string[]; readonly whyWide: readonly string[] }

export function explainExplanation(found: ReadinessExplanation, nameOfRule: (rule: string) => string, locale: Locale): ExplainedReadiness {
  const { holdsBack, afterMore, whyWide } = found
  return {
    holdsBack: holdsBack
      ? say(readiness, locale, 'holdsBack', { rule: nameOfRule(holdsBack.rule), chance: chanceText(holdsBack.probability) })
      : say(readiness, locale, 'nothingHoldsBack'),
    afterMore: afterMore.map(({ count, probability, low, high }) =>
      say(readiness, locale, 'afterMore', { count, chance: chanceText(probability), low: chanceText(low), high: chanceText(high) })),
    whyWide: whyWide.map((because) => explainWidth(because, locale)),
  }
}

function explainWidth(because: WideBecause, locale: Locale): string {
  switch (because.code) {
    case 'readers-differ':
    case 'verdicts-only':
      return say(readiness, locale, `wide-${because.code}`, { count: because.count, of: because.of })
    case 'few-coupons':
    case 'gap':
    case 'scattered-margins':
    case 'few-test-results':
      return say(readiness, locale, `wide-${because.code}`, { points: because.narrowerBy.toFixed(2) })
  }
}

/** How far coupons that only the student inspected count, with the numbers behind it. `reader` is the student themself, or someone else. */
export function explainSelfTrust({ compared, agreed, minimum, weight }: SelfTrust, locale: Locale, reader: 'student' | 'other' = 'other'): string {
  const who = reader === 'student' ? 'own' : 'self'
  if (compared < minimum) return say(readiness, locale, `${who}NotYet`, { compared, minimum })
  if (weight === 0) return say(readiness, locale, `${who}NoBetter`, { agreed, compared })
  return say(readiness, locale, `${who}Counts`, { weight: weight.toFixed(2), agreed, compared })
}

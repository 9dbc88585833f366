import type { Verdict } from './types'

/** A verdict an instructor may decide on. Incomplete is a fact about the readings, never a decision. */
export type DecidedVerdict = 'accept' | 'reject'

/**
 * Why a verdict may not be decided over the computed one, as a sentence; null when it may.
 * An incomplete scorecard can be rejected for what was seen, but not accepted: nobody can decide what a size was that nobody measured.
 */
export function overrideProblem(computed: Verdict, decided: DecidedVerdict): string | null {
  if (computed === decided) return 'The readings give this verdict already: there is nothing to decide.'
  if (computed === 'incomplete' && decided === 'accept') {
    return 'Something a rule needs was not measured, and a decision cannot stand in for a measurement. Measure it and correct the inspection; without it the coupon can only be rejected.'
  }
  return null
}

/** The verdict that stands: the instructor's decision where there is one, else the computed one. */
export const standingVerdict = (computed: Verdict, override: { readonly verdict: Verdict } | null): Verdict => override?.verdict ?? computed

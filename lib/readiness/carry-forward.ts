import { fitCalibration, levelFor, type ForecastResult } from './calibration'
import { WITHDRAWAL_GAP, type Advice } from './decide'
import { readinessOf, type FilterState } from './incremental'
import type { FilterParameters } from './parameters'
import type { Readiness } from './read-out'

/** What was stored at the last coupon or inspection. */
export type StoredStanding = { readonly state: FilterState; readonly advice: Advice }

/** The program's rule and results, read once for a whole board. */
export type CarryRule = {
  readonly threshold: number
  readonly staleAfterDays: number
  readonly results: readonly ForecastResult[]
  /** Those the stored states were made with; the shipped ones when absent. */
  readonly parameters?: FilterParameters
}

export type CarriedStanding = Readiness & { readonly level: 0.8 | 0.95; readonly advice: Advice }

/** Prepares to carry many standings to one day: the calibration is fitted once. */
export function carrier({ threshold, staleAfterDays, results, parameters }: CarryRule, today: number): (stored: StoredStanding) => CarriedStanding {
  const level = levelFor(results.length)
  const options = { level, ...(parameters && { parameters }), ...(results.length > 0 && { calibration: fitCalibration(results) }) }
  return ({ state, advice }) => {
    const readiness = readinessOf(state, Math.max(today, state.day ?? today), options)
    return { ...readiness, level, advice: adviceNow(advice, readiness.probability, state.day === null ? 0 : today - state.day, threshold, staleAfterDays) }
  }
}

/**
 * The advice of the last write, with the chance as it is today: a gap makes it stale, and a suggestion is withdrawn only when the
 * chance has fallen 0.10 below the threshold. What else decides (passes, open findings, a failed test) changes only with a write.
 */
function adviceNow(stored: Advice, probability: number, daysSince: number, threshold: number, staleAfterDays: number): Advice {
  if (daysSince > staleAfterDays) return 'stale'
  if (probability < threshold - WITHDRAWAL_GAP) return 'practise'
  return probability < threshold && stored !== 'test' ? 'close' : stored
}

import 'server-only'
import { program as words } from '@/lib/language/program'
import { say } from '@/lib/language/say'
import { operatingCurveView, type OperatingCurveView } from '@/lib/reports/operating-curve'
import { RULE_LIMITS } from '@/lib/schemas/readiness-rule'
import type { Viewer } from '../auth/viewer'
import { findProgram } from '../data/program'

/** What a failed test costs until someone says otherwise, in coupons: an assumption, no source. */
const USUAL_COST = 15
const MOST_COST = 200

export type ProgramReadiness = {
  readonly threshold: number
  readonly values: { readonly readinessThreshold: string; readonly minimumCoupons: string; readonly staleAfterDays: string }
  readonly hints: { readonly threshold: string; readonly minimum: string; readonly stale: string }
  /** What a failed test costs, as used; `typed` is what stands in the box, `problem` what is wrong with it. */
  readonly cost: { readonly used: number; readonly typed: string; readonly problem: string | null }
  readonly curve: OperatingCurveView
}

/** The rule of the viewer's program beside what other thresholds would cost. `asked`: the cost of a failed test, as typed. */
export async function programReadiness(viewer: Viewer, asked: string | undefined): Promise<ProgramReadiness> {
  const { readinessThreshold, minimumCoupons, staleAfterDays } = await findProgram(viewer)
  const { locale } = viewer
  const typed = asked?.trim() ?? String(USUAL_COST)
  const read = /^\d{1,3}(?:[.,]\d)?$/.test(typed) ? Number(typed.replace(',', '.')) : Number.NaN
  const good = read >= 0 && read <= MOST_COST
  const used = good ? read : USUAL_COST
  const hint = (key: 'thresholdHint' | 'minimumHint' | 'staleHint', { least, most }: { least: number; most: number }): string =>
    say(words, locale, key, key === 'thresholdHint' ? { least: least.toFixed(2), most: most.toFixed(2) } : { least, most })
  return {
    threshold: readinessThreshold,
    values: { readinessThreshold: readinessThreshold.toFixed(2), minimumCoupons: String(minimumCoupons), staleAfterDays: String(staleAfterDays) },
    hints: {
      threshold: hint('thresholdHint', RULE_LIMITS.threshold), minimum: hint('minimumHint', RULE_LIMITS.minimumCoupons), stale: hint('staleHint', RULE_LIMITS.staleAfterDays),
    },
    cost: { used, typed: typed.slice(0, 20), problem: good ? null : say(words, locale, 'costWrong') },
    curve: operatingCurveView(readinessThreshold, used),
  }
}

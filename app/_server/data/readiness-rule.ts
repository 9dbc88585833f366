import 'server-only'
import type { ReadinessRule, TestResult } from '@/lib/readiness/assess'
import { dayOfDate } from '@/lib/reports/calendar'
import type { Transaction } from '../db'
import { modelInUse, type ModelInUse } from './model-in-use'
import type { SkillKey } from './practice'

/** Test results that correct the program's estimates: the latest, so that the work does not grow with the program's age. */
const MOST_RESULTS = 500

/**
 * The program's latest test results that this model had spoken of, oldest first: they correct its estimates. What another model had
 * said would correct errors that this one does not make, so after a new model is adopted the correction starts again.
 */
export async function forecastResults(tx: Transaction, programId: string, model: Pick<ModelInUse, 'version'>): Promise<(TestResult & { forecast: number })[]> {
  const rows = await tx.testAttempt.findMany({
    where: { programId, forecast: { not: null }, modelVersion: model.version },
    orderBy: [{ testedOn: 'desc' }, { id: 'desc' }], take: MOST_RESULTS, select: { passed: true, forecast: true },
  })
  return rows.reverse().flatMap(({ passed, forecast }) => (forecast === null ? [] : [{ passed, forecast }]))
}

export type RuleInForce = {
  readonly rule: ReadinessRule
  readonly model: ModelInUse
  readonly timeZone: string
  /** -Infinity without a test. */
  readonly lastTestDay: number
}

/** The coordinator's rule with the model in use, the program's test results and this student's own tests of this exercise. */
export async function ruleFor(tx: Transaction, key: SkillKey): Promise<RuleInForce> {
  const { timeZone, readinessThreshold, minimumCoupons, staleAfterDays } = await tx.program.findUniqueOrThrow({
    where: { id: key.programId },
    select: { readinessThreshold: true, minimumCoupons: true, staleAfterDays: true, timeZone: true },
  })
  const model = await modelInUse(key.programId, tx)
  const tests = await tx.testAttempt.findMany({ where: key, orderBy: [{ testedOn: 'asc' }, { createdAt: 'asc' }], select: { passed: true, testedOn: true } })
  const own = tests.map(({ passed, testedOn }) => ({ passed, day: dayOfDate(testedOn) }))
  const testResults: TestResult[] = [...(await forecastResults(tx, key.programId, model)), ...own]
  const { version, parameters } = model
  return {
    timeZone, model, lastTestDay: own.at(-1)?.day ?? -Infinity,
    rule: { threshold: readinessThreshold, minimumCoupons, staleAfterDays, testResults, model: { version, parameters } },
  }
}

import 'server-only'
import type { CriteriaSet } from '@/lib/criteria/types'
import { worstMargin } from '@/lib/readiness/worst-margin'
import type { StoredReadings } from '@/lib/schemas/readings'
import { findingDetailSchema } from '@/lib/schemas/finding-detail'
import { scoreInspection } from '@/lib/scoring/score-inspection'
import type { Finding, FindingVerdict, Inspection, Scorecard } from '@/lib/scoring/types'
import { weldOfExercise } from '@/lib/scoring/weld-of-exercise'
import type { Finding as FindingRow, Prisma, Scorecard as ScorecardRow } from '@/prisma/generated/client'
import type { Transaction } from '../db'
import type { ExerciseRecord } from './exercises'

export type Judged = {
  readonly scorecard: Scorecard
  readonly worstMargin: number | null
  readonly attributesGood: boolean | null
}

/** The one place where the server judges an inspection, and reads from it what the readiness model needs. */
export function judge(exercise: ExerciseRecord, inspection: Inspection, criteria: CriteriaSet): Judged {
  const scorecard = scoreInspection(weldOfExercise(exercise), inspection, criteria)
  const evidence = worstMargin(scorecard, criteria)
  return { scorecard, worstMargin: evidence.worstMargin, attributesGood: evidence.attributesGood }
}

const toRow: Readonly<Record<FindingVerdict, FindingRow['verdict']>> = {
  accept: 'accept', reject: 'reject', 'not-measured': 'notMeasured', 'not-applicable': 'notApplicable',
}
/** A stored finding's verdict as the library calls it. */
export const FINDING_VERDICTS: Readonly<Record<FindingRow['verdict'], FindingVerdict>> = {
  accept: 'accept', reject: 'reject', notMeasured: 'not-measured', notApplicable: 'not-applicable',
}

export type NewInspection = {
  readonly programId: string
  readonly couponId: string
  readonly inspectorId: string
  readonly kind: 'self' | 'instructor' | 'second'
  readonly revision: number
  readonly readings: StoredReadings
  readonly judged: Judged
  readonly criteria: ExerciseRecord['criteria']
}

/** Writes an inspection with its scorecard and findings. @throws P2002 when the revision was taken meanwhile */
export async function writeInspection(tx: Transaction, input: NewInspection): Promise<string> {
  const { programId, judged } = input
  const inspection = await tx.inspection.create({
    data: {
      programId, couponId: input.couponId, inspectorId: input.inspectorId, kind: input.kind, revision: input.revision,
      readings: input.readings as unknown as Prisma.InputJsonObject,
    },
    select: { id: true },
  })
  await tx.scorecard.create({
    data: {
      programId, inspectionId: inspection.id,
      criteriaId: input.criteria.id, criteriaVersion: input.criteria.version,
      scoringVersion: judged.scorecard.scoringVersion, verdict: judged.scorecard.verdict, mark: judged.scorecard.mark,
      worstMargin: judged.worstMargin, attributesGood: judged.attributesGood,
    },
  })
  await tx.finding.createMany({ data: judged.scorecard.findings.map((finding) => findingRow(programId, inspection.id, finding)) })
  return inspection.id
}

/** A finding as its row: columns for what reviews ask about, the rest as it is. */
export function findingRow(programId: string, inspectionId: string, finding: Finding): Prisma.FindingCreateManyInput {
  const { rule, verdict, measured, limit, unit, margin, closeCall, where, ...detail } = finding
  return {
    programId, inspectionId, rule, verdict: toRow[verdict], measured, limitMin: limit.min, limitMax: limit.max, unit, margin, closeCall,
    fromMm: where?.fromMm ?? null, toMm: where?.toMm ?? null, detail: detail as unknown as Prisma.InputJsonObject,
  }
}

/** A stored scorecard as the library knows it, its findings in the criteria set's order of rules. */
export function toScorecard(row: ScorecardRow & { findings: FindingRow[] }, criteria: CriteriaSet): Scorecard {
  const order = new Map(criteria.rules.map((rule, index) => [rule.id, index]))
  const findings = row.findings
    .map((each): Finding => ({
      rule: each.rule,
      verdict: FINDING_VERDICTS[each.verdict],
      measured: each.measured,
      limit: { min: each.limitMin, max: each.limitMax },
      unit: each.unit === 'count' || each.unit === 'ratio' || each.unit === 'degree' ? each.unit : 'mm',
      margin: each.margin,
      closeCall: each.closeCall,
      where: each.fromMm !== null && each.toMm !== null ? { fromMm: each.fromMm, toMm: each.toMm } : null,
      ...findingDetailSchema.parse(each.detail),
    }))
    .sort((a, b) => (order.get(a.rule) ?? 0) - (order.get(b.rule) ?? 0))
  return { criteriaId: row.criteriaId, scoringVersion: row.scoringVersion, verdict: row.verdict, mark: row.mark, findings }
}

import 'server-only'
import { assessReadiness, type ReadinessRule } from '@/lib/readiness/assess'
import { MODEL_VERSION, type FilterParameters } from '@/lib/readiness/parameters'
import type { PracticeCoupon } from '@/lib/readiness/practice-coupon'
import { practiceLoss, refit } from '@/lib/readiness/refit'
import { calendarDay } from '@/lib/reports/calendar'
import { db } from '../db'
import { recordAudit } from './audit'
import { modelInUse } from './model-in-use'
import { evidenceOf, practiceOf } from './practice'
import { LEAST_COUPONS } from './readiness-models'
import { ruleFor } from './readiness-rule'

/** A chance that moves by more than this is worth telling a coordinator. */
const WORTH_TELLING = 0.05

/** `same`: nothing was inspected since the last proposal. `no-better`: the model in use forecasts the practice at least as well. */
export type RefitOutcome =
  | { readonly kind: 'few'; readonly have: number; readonly need: number }
  | { readonly kind: 'same'; readonly version: string }
  | { readonly kind: 'no-better'; readonly series: number; readonly lossBefore: number; readonly lossAfter: number }
  | {
      readonly kind: 'proposed'; readonly version: string; readonly series: number; readonly coupons: number
      readonly lossBefore: number; readonly lossAfter: number; readonly standings: number; readonly moved: number
    }

type Standing = { readonly coupons: readonly PracticeCoupon[]; readonly asOfDay: number; readonly rule: ReadinessRule }

/**
 * Refits the readiness model to a program's own practice and stores what it finds as a proposal, which a coordinator may adopt: by itself
 * it changes no standing. A series is one student's practice of one exercise with eight coupons or more judged by an instructor.
 *
 * For a job in its own process: it reads everybody's practice and then reckons for seconds to minutes.
 *
 * @param options `evaluations` of the loss to spend (the library's number when absent), `now`
 */
export async function proposeModel(programId: string, { evaluations, now = new Date() }: { readonly evaluations?: number; readonly now?: Date } = {}): Promise<RefitOutcome> {
  const inUse = await modelInUse(programId)
  const standings = await standingsOf(programId, now)
  const series = standings.map(({ coupons }) => coupons).filter((coupons) => coupons.filter(isVouchedFor).length >= LEAST_COUPONS)
  const coupons = series.reduce((sum, each) => sum + each.filter(isVouchedFor).length, 0)
  const last = await db().readinessModel.findFirst({ where: { programId, filterVersion: MODEL_VERSION }, orderBy: { proposedAt: 'desc' }, select: { version: true, series: true, coupons: true } })
  if (last?.series === series.length && last.coupons === coupons) return { kind: 'same', version: last.version }

  const found = refit(series, evaluations === undefined ? {} : { evaluations })
  if (found.kind === 'insufficient') return { kind: 'few', have: found.have, need: found.need }
  const { total, verdicts } = practiceLoss(series, inUse.parameters)
  const lossBefore = total / verdicts
  const { parameters, held, lossAfter } = found
  if (!(lossAfter < lossBefore)) return { kind: 'no-better', series: series.length, lossBefore, lossAfter }

  const moved = countMoved(standings, parameters)
  return db().$transaction(async (tx) => {
    // One proposal at a time, so that versions are numbered without a gap.
    await tx.$queryRaw`SELECT 1 FROM "Program" WHERE "id" = ${programId}::uuid FOR UPDATE`
    const version = `${MODEL_VERSION}-refit-${(await tx.readinessModel.count({ where: { programId, filterVersion: MODEL_VERSION } })) + 1}`
    const stored = { series: series.length, coupons, lossBefore, lossAfter, ...moved }
    await tx.readinessModel.create({ data: { programId, version, filterVersion: MODEL_VERSION, parameters: { ...parameters }, held, inUse: inUse.version, proposedAt: now, ...stored } })
    await recordAudit(tx, { programId, personId: null }, { action: 'readiness-model.propose', subject: { type: 'program', id: programId }, after: { version, inUse: inUse.version, ...stored } })
    return { kind: 'proposed', version, ...stored }
  })
}

const isVouchedFor = ({ weight }: PracticeCoupon): boolean => weight === undefined || weight === 1

/** Everybody's practice, one student and exercise at a time: what is held in memory is a few numbers a coupon. */
async function standingsOf(programId: string, now: Date): Promise<Standing[]> {
  const keys = await db().skillSummary.findMany({
    where: { programId, couponsUsed: { gt: 0 } }, orderBy: [{ studentId: 'asc' }, { exerciseId: 'asc' }], select: { programId: true, studentId: true, exerciseId: true },
  })
  const standings: Standing[] = []
  for (const key of keys) {
    const { rule, timeZone, lastTestDay } = await ruleFor(db(), key)
    const practice = await practiceOf(db(), key, timeZone)
    const { evidence } = await evidenceOf(db(), practice)
    standings.push({ coupons: evidence.judged.map(({ coupon }) => coupon), asOfDay: Math.max(calendarDay(now, timeZone), practice.lastDay, lastTestDay), rule })
  }
  return standings
}

/** Standings with an estimate, and those that the parameters would move. No test was forecast with them, so nothing corrects them yet. */
function countMoved(standings: readonly Standing[], parameters: FilterParameters): { readonly standings: number; readonly moved: number } {
  const shifts = standings.flatMap(({ coupons, asOfDay, rule }) => {
    const before = assessReadiness(coupons, asOfDay, rule)
    const after = assessReadiness(coupons, asOfDay, { ...rule, testResults: [], model: { version: 'proposed', parameters } })
    return before.kind === 'estimate' && after.kind === 'estimate' ? [Math.abs(after.probability - before.probability)] : []
  })
  return { standings: shifts.length, moved: shifts.filter((shift) => shift > WORTH_TELLING).length }
}

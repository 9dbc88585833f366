import 'server-only'
import { createHash } from 'node:crypto'
import type { CriteriaSet } from '@/lib/criteria/types'
import { couponsFromRecords, type CouponRecord, type Evidence, type InspectionRecord } from '@/lib/readiness/coupons-from-records'
import { stationCount } from '@/lib/readiness/station-count'
import type { StationCount } from '@/lib/readiness/worst-margin'
import { calendarDay } from '@/lib/reports/calendar'
import { readStoredReadings } from '@/lib/schemas/readings'
import type { Scorecard } from '@/lib/scoring/types'
import { SCORING_VERSION } from '@/lib/scoring/version'
import type { Prisma } from '@/prisma/generated/client'
import type { Transaction } from '../db'
import { criteriaSet } from './criteria'
import { toScorecard } from './scorecards'

export type SkillKey = { readonly programId: string; readonly studentId: string; readonly exerciseId: string }

/** More coupons of one exercise than any student makes; the oldest beyond them no longer say anything about today. */
const MOST_COUPONS = 200

/** The looks that count. A second reading is not one of them: it judges how alike people judge, and tells nothing of the student. */
const couponSelect = (seen: Prisma.CouponWhereInput) => ({
  receivedAt: true, weldedAt: true, verdict: true, mark: true, selfVerdict: true, selfMark: true,
  inspections: {
    where: { supersededAt: null, kind: { in: ['self', 'instructor'] }, coupon: seen },
    select: { id: true, kind: true, scorecard: { select: { verdict: true, override: { select: { verdict: true } } } } },
  },
} satisfies Prisma.CouponSelect)

type CouponRow = Prisma.CouponGetPayload<{ select: ReturnType<typeof couponSelect> }>

/** A student's coupons of one exercise, oldest first, as far as verdicts tell: which of them the readiness model reads, and by whom judged. */
export type Practice = {
  readonly programId: string
  readonly rows: readonly CouponRow[]
  /** Day of each coupon, never going back. */
  readonly days: readonly number[]
  /** -Infinity without coupons. */
  readonly lastDay: number
  /** Who leads, with what weight, day and verdict; its coupons carry no margins. */
  readonly outline: Evidence
  /** The leading inspection of each judged coupon of the outline. */
  readonly leads: readonly string[]
  /** Stations the exercise asks for now. */
  readonly stationsAsked: number
}

/** What of the coupons is read. `until`: the last day that counts; `seen`: those whose looks may be read, the others count as not inspected. */
type Reading = { readonly until?: number; readonly seen?: Prisma.CouponWhereInput }

/** Everything is read when nothing else is said. */
export async function practiceOf(tx: Transaction, key: SkillKey, timeZone: string, { until = Infinity, seen = {} }: Reading = {}): Promise<Practice> {
  const found = await tx.coupon.findMany({ where: key, orderBy: { number: 'desc' }, take: MOST_COUPONS, select: couponSelect(seen) })
  // A device's clock may put coupons out of order; their number is the order they were logged in, so days only ever go forward.
  let lastDay = -Infinity
  const dated = found.reverse().map((row) => {
    lastDay = Math.max(lastDay, calendarDay(row.weldedAt < row.receivedAt ? row.weldedAt : row.receivedAt, timeZone))
    return { row, day: lastDay }
  }).filter(({ day }) => day <= until)
  const rows = dated.map(({ row }) => row)
  const days = dated.map(({ day }) => day)

  const idOf = new Map<InspectionRecord, string>()
  const outline = couponsFromRecords(rows.map((row, index) => ({ day: days[index]!, inspections: row.inspections.flatMap((inspection) => {
    const record = outlined(inspection)
    if (record) idOf.set(record, inspection.id)
    return record ?? []
  }) })))
  const { currentVersion, versions } = await tx.exercise.findUniqueOrThrow({
    where: { programId_id: { programId: key.programId, id: key.exerciseId } }, select: { currentVersion: true, versions: { select: { version: true, stationCount: true } } },
  })
  return {
    programId: key.programId, rows, days, lastDay: days.at(-1) ?? -Infinity, outline,
    leads: outline.judged.flatMap(({ lead }) => idOf.get(lead) ?? []),
    stationsAsked: versions.find(({ version }) => version === currentVersion)?.stationCount ?? 0,
  }
}

/** An inspection without its findings: enough for who leads and what was decided, not for margins. */
function outlined({ kind, scorecard }: CouponRow['inspections'][number]): InspectionRecord | null {
  return scorecard && { by: kind, ...statedOf(scorecard.override), scorecard: { criteriaId: '', scoringVersion: '', verdict: scorecard.verdict, mark: null, findings: [] }, criteria: { rules: [] } }
}

/** An instructor's own verdict over the computed one, as the library reads it: it counts, without margins. */
const statedOf = (override: { readonly verdict: 'accept' | 'reject' | 'incomplete' } | null): Pick<InspectionRecord, 'stated'> =>
  override && override.verdict !== 'incomplete' ? { stated: override.verdict } : {}

export type WholeEvidence = {
  /** `index` counts from the first coupon that was read. */
  readonly evidence: Evidence
  /** A margin was corrected because its inspection had another number of stations than the exercise asks for. */
  readonly corrected: boolean
}

/** The same with findings and margins, from the judged coupon at place `from` of the outline on. */
export async function evidenceOf(tx: Transaction, practice: Practice, from = 0): Promise<WholeEvidence> {
  const { programId, rows, days, outline } = practice
  const first = from === 0 ? 0 : (outline.judged[from]?.index ?? rows.length)
  const scored = await scorecardsOf(tx, programId, rows.slice(first).flatMap((row) => row.inspections.map(({ id }) => id)))
  const stations = await stationCounts(tx, practice, from, scored)
  const records = rows.slice(first).map((row, index): CouponRecord => ({
    day: days[first + index]!,
    inspections: row.inspections.flatMap(({ id, kind }) => {
      const found = scored.get(id)
      const counted = stations.get(id)
      return found ? { by: kind, ...found, ...(counted && { stations: counted }) } : []
    }),
  }))
  return { evidence: couponsFromRecords(records, outline.trust), corrected: stations.size > 0 }
}

type Scored = { readonly scorecard: Scorecard; readonly criteria: CriteriaSet; readonly stated?: 'accept' | 'reject' }

async function scorecardsOf(tx: Transaction, programId: string, ids: readonly string[]): Promise<ReadonlyMap<string, Scored>> {
  const found = await tx.scorecard.findMany({ where: { programId, inspectionId: { in: [...ids] } }, include: { findings: true, override: { select: { verdict: true } } } })
  const scored = new Map<string, Scored>()
  for (const row of found) {
    const criteria = await criteriaSet(programId, row.criteriaId, row.criteriaVersion, tx)
    scored.set(row.inspectionId, { scorecard: toScorecard(row, criteria), criteria, ...statedOf(row.override) })
  }
  return scored
}

/**
 * Corrections for the leading inspections, from place `from` on, whose number of stations is not the one asked for. The spread within
 * a bead is pooled over the leading readings of all the coupons, which are read only when there is something to correct.
 */
async function stationCounts(tx: Transaction, practice: Practice, from: number, scored: ReadonlyMap<string, Scored>): Promise<ReadonlyMap<string, StationCount>> {
  const { programId, leads, stationsAsked } = practice
  const counts = new Map<string, StationCount>()
  const asked = leads.slice(from)
  if (asked.length === 0 || stationsAsked === 0) return counts
  const odd = await tx.$queryRaw<{ id: string }[]>`
    SELECT "id" FROM "Inspection" WHERE "programId" = ${programId}::uuid AND "id" = ANY(${asked}::uuid[])
      AND jsonb_array_length("readings" -> 'inspection' -> 'stations') NOT IN (0, ${stationsAsked}::int)`
  if (odd.length === 0) return counts
  const rows = await tx.inspection.findMany({ where: { programId, id: { in: [...leads] } }, select: { id: true, readings: true } })
  const beads = new Map(rows.map(({ id, readings }) => [id, readStoredReadings(readings).inspection]))
  for (const { id } of odd) {
    const bead = beads.get(id)
    const others = [...beads].filter(([other]) => other !== id).map(([, inspection]) => inspection)
    const count = bead && stationCount(stationsAsked, bead, others, scored.get(id)?.criteria ?? { rules: [] })
    if (count) counts.set(id, count)
  }
  return counts
}

/**
 * Tells whether the first `count` judged coupons are those that a stored belief rests on: the same looks at them, on the same days, with
 * the same weights, judged and read in the same way. Looks and criteria never change under their ids, so no margin has to be read; a verdict
 * may be decided over a look that stays, so the verdicts that count are part of it.
 */
export function printOf({ outline, leads, stationsAsked }: Practice, model: string, count: number): string {
  const coupons = outline.judged.slice(0, count).map(({ coupon }, index) => [leads[index], coupon.day, coupon.weight ?? 1, coupon.accepted])
  return createHash('sha256').update(JSON.stringify([model, SCORING_VERSION, stationsAsked, coupons])).digest('base64url')
}

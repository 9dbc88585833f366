import 'server-only'
import { POLARITIES } from '@/lib/procedure/process'
import type { PassSettings } from '@/lib/procedure/booth-card'
import { fullName } from '@/lib/reports/full-name'
import { readStoredReadings, type StoredReadings } from '@/lib/schemas/readings'
import type { DecidedVerdict } from '@/lib/scoring/override'
import type { Scorecard, Verdict } from '@/lib/scoring/types'
import type { Prisma } from '@/prisma/generated/client'
import type { Viewer } from '../auth/viewer'
import { db } from '../db'
import { criteriaSet } from './criteria'
import { toExercise, type ExerciseRecord } from './exercises'
import type { PhotoRecord } from './photos'
import { couponScope, gradableCouponScope } from './scope'
import { toScorecard } from './scorecards'

export type InspectionKind = 'self' | 'instructor' | 'second'

export type InspectionRecord = {
  readonly id: string
  readonly kind: InspectionKind
  readonly revision: number
  readonly inspector: string
  readonly submittedAt: Date
  readonly superseded: boolean
  readonly readings: StoredReadings
  readonly scorecard: Scorecard
  /** The instructor's own verdict over the computed one, where one was decided. */
  readonly override: OverrideRecord | null
}

export type OverrideRecord = { readonly verdict: DecidedVerdict; readonly reason: string; readonly by: string; readonly at: Date }

/** One line of a list of coupons. */
export type CouponLine = {
  readonly id: string
  readonly number: number
  readonly weldedAt: Date
  readonly receivedAt: Date
  readonly verdict: Verdict | null
  readonly mark: number | null
  readonly selfVerdict: Verdict | null
  readonly selfMark: number | null
  readonly waiting: boolean
}

export type CouponRecord = CouponLine & {
  readonly classId: string
  readonly className: string
  readonly student: { readonly id: string; readonly name: string }
  readonly booth: number | null
  readonly note: string | null
  readonly exercise: ExerciseRecord
  readonly passes: readonly PassSettings[]
  /** Standing and superseded, oldest first. */
  readonly inspections: readonly InspectionRecord[]
  readonly photos: readonly PhotoRecord[]
}

const inspectionSelect = {
  include: {
    inspector: { select: { givenName: true, familyName: true } },
    scorecard: { include: { findings: true, override: { include: { by: { select: { givenName: true, familyName: true } } } } } },
  },
  orderBy: { submittedAt: 'asc' },
} as const

const include = {
  class: { select: { id: true, name: true } },
  student: { select: { id: true, givenName: true, familyName: true } },
  exercise: true,
  passes: { orderBy: { sequence: 'asc' } },
  inspections: inspectionSelect,
  photos: { orderBy: { createdAt: 'asc' } },
} as const

type Row = Prisma.CouponGetPayload<{ include: typeof include }>

const toPass = (row: Row['passes'][number]): PassSettings => ({
  amps: row.amps, volts: row.volts, wireFeedMmPerS: row.wireFeedMmPerS, contactTipToWorkMm: row.contactTipToWorkMm,
  polarity: POLARITIES.find((each) => each === row.polarity) ?? null, gas: row.gas, arcSeconds: row.arcSeconds, lengthMm: row.lengthMm,
})

async function toInspections(programId: string, rows: Row['inspections']): Promise<InspectionRecord[]> {
  const records: InspectionRecord[] = []
  for (const row of rows) {
    if (!row.scorecard) continue
    const criteria = await criteriaSet(programId, row.scorecard.criteriaId, row.scorecard.criteriaVersion)
    records.push({
      id: row.id, kind: row.kind, revision: row.revision, submittedAt: row.submittedAt, superseded: row.supersededAt !== null,
      inspector: fullName(row.inspector),
      readings: readStoredReadings(row.readings), scorecard: toScorecard(row.scorecard, criteria), override: toOverride(row.scorecard.override),
    })
  }
  return records
}

type OverrideRow = NonNullable<Row['inspections'][number]['scorecard']>['override']
const toOverride = (row: OverrideRow): OverrideRecord | null =>
  row && row.verdict !== 'incomplete' ? { verdict: row.verdict, reason: row.reason, by: fullName(row.by), at: row.createdAt } : null

async function toCoupon(row: Row): Promise<CouponRecord> {
  return {
    ...toLine(row),
    classId: row.class.id, className: row.class.name,
    student: { id: row.student.id, name: fullName(row.student) },
    booth: row.booth, note: row.note, exercise: toExercise(row.exercise), passes: row.passes.map(toPass),
    inspections: await toInspections(row.programId, row.inspections),
    photos: row.photos.map((photo) => ({ id: photo.id, widthPx: photo.widthPx, heightPx: photo.heightPx, at: photo.createdAt })),
  }
}

type LineRow = Pick<Row, 'id' | 'number' | 'weldedAt' | 'receivedAt' | 'verdict' | 'mark' | 'selfVerdict' | 'selfMark' | 'waitingSince'>
const toLine = (row: LineRow): CouponLine => ({
  id: row.id, number: row.number, weldedAt: row.weldedAt, receivedAt: row.receivedAt,
  verdict: row.verdict, mark: row.mark, selfVerdict: row.selfVerdict, selfMark: row.selfMark, waiting: row.waitingSince !== null,
})

/** A coupon with all that was recorded of it, or null when it does not exist or is not the viewer's to see. */
export async function findCoupon(viewer: Viewer, couponId: string): Promise<CouponRecord | null> {
  const row = await db().coupon.findFirst({ where: { AND: [{ id: couponId }, couponScope(viewer)] }, include })
  return row && toCoupon(row)
}

/** What an instructor sees before submitting: the coupon without a single number of the student's own inspection, nor their verdict. */
export type BlindCoupon = Omit<CouponRecord, 'inspections' | 'selfVerdict' | 'selfMark' | 'note'> & {
  /** The standing instructor's inspection, when this is a correction. */
  readonly standing: InspectionRecord | null
  readonly nextRevision: number
}

/** A coupon as it is shown for grading, or null when the viewer may not grade it. */
export async function findBlindCoupon(viewer: Viewer, couponId: string): Promise<BlindCoupon | null> {
  const row = await db().coupon.findFirst({
    where: { AND: [{ id: couponId }, gradableCouponScope(viewer)] },
    include: { ...include, inspections: { ...inspectionSelect, where: { kind: 'instructor' } } },
  })
  return row && toBlind(row)
}

/** Of a row read without the student's inspection: what is left of the student's own is dropped here. */
async function toBlind(row: Row): Promise<BlindCoupon> {
  const { inspections, selfVerdict: _verdict, selfMark: _mark, note: _note, ...coupon } = await toCoupon(row)
  return {
    ...coupon,
    standing: inspections.find((inspection) => !inspection.superseded) ?? null,
    nextRevision: Math.max(0, ...inspections.map((inspection) => inspection.revision)) + 1,
  }
}

/** More coupons than one sitting grades; the rest follow when these are done. */
const MOST_IN_GRID = 60

/** The coupons of one exercise that wait in a taught class, as they are shown for grading, longest waiting first. */
export async function listBlindWaiting(viewer: Viewer, key: { classId: string; exerciseId: string }): Promise<(BlindCoupon & { readonly takenBy: TakenBy })[]> {
  const rows = await db().coupon.findMany({
    where: { AND: [{ classId: key.classId, exerciseId: key.exerciseId, waitingSince: { not: null } }, gradableCouponScope(viewer)] },
    orderBy: [{ waitingSince: 'asc' }, { id: 'asc' }],
    take: MOST_IN_GRID,
    include: { ...include, takenBy: { select: { givenName: true, familyName: true } }, inspections: { ...inspectionSelect, where: { kind: 'instructor' } } },
  })
  return Promise.all(rows.map(async ({ takenBy, ...row }) => ({ ...(await toBlind(row)), takenBy: takenOf(viewer, { ...row, takenBy }) })))
}

export type StoryCoupon = CouponLine & {
  /** The inspection that counts: the instructor's if there is one, else the student's own; null for others while a coupon waits for their look. */
  readonly counts: Pick<InspectionRecord, 'kind' | 'readings' | 'scorecard' | 'override'> | null
  readonly exercise: ExerciseRecord
}

/**
 * The latest coupons of one student in one exercise, oldest first, each with the inspection that counts. Of a coupon that waits for an
 * instructor's look only the student sees their own: the instructor's must come first and of itself.
 */
export async function listStory(viewer: Viewer, key: { studentId: string; exerciseId: string }, most: number): Promise<StoryCoupon[]> {
  const rows = await db().coupon.findMany({
    where: { AND: [{ studentId: key.studentId, exerciseId: key.exerciseId }, couponScope(viewer)] },
    orderBy: { number: 'desc' },
    take: most,
    include: { exercise: true, inspections: { ...inspectionSelect, where: { supersededAt: null } } },
  })
  const story: StoryCoupon[] = []
  for (const row of rows.reverse()) {
    const blind = row.waitingSince !== null && key.studentId !== viewer.personId
    const inspections = blind ? [] : await toInspections(row.programId, row.inspections)
    const counts = inspections.find((each) => each.kind === 'instructor') ?? inspections.find((each) => each.kind === 'self') ?? null
    story.push({ ...toLine(row), ...(blind && { selfVerdict: null, selfMark: null }), counts, exercise: toExercise(row.exercise) })
  }
  return story
}

export type WaitingCoupon = {
  readonly id: string
  readonly booth: number | null
  readonly student: { readonly id: string; readonly name: string }
  readonly exerciseId: string
  readonly exerciseTitle: string
  readonly number: number
  readonly since: Date
  readonly takenBy: TakenBy
}

/** Who has a waiting coupon open for grading now. */
export type TakenBy = { readonly name: string; readonly self: boolean; readonly since: Date } | null

type TakenRow = { readonly takenById: string | null; readonly takenAt: Date | null; readonly takenBy: { readonly givenName: string; readonly familyName: string } | null }

function takenOf(viewer: Viewer, { takenBy, takenAt, takenById }: TakenRow): TakenBy {
  const stillTaken = new Date(Date.now() - TAKEN_MINUTES * 60 * 1000)
  return takenBy && takenAt && takenAt > stillTaken ? { name: fullName(takenBy), self: takenById === viewer.personId, since: takenAt } : null
}

/** Coupons of a taught class that wait for an inspection, longest waiting first. */
export async function listWaiting(viewer: Viewer, classId: string): Promise<WaitingCoupon[]> {
  const rows = await db().coupon.findMany({
    where: { AND: [{ classId, waitingSince: { not: null } }, gradableCouponScope(viewer)] },
    orderBy: [{ waitingSince: 'asc' }, { id: 'asc' }],
    take: 200,
    select: {
      id: true, booth: true, number: true, exerciseId: true, waitingSince: true, takenById: true, takenAt: true,
      student: { select: { id: true, givenName: true, familyName: true } },
      takenBy: { select: { givenName: true, familyName: true } },
      exercise: { select: { title: true } },
    },
  })
  return rows.map((row) => ({
    id: row.id, booth: row.booth, number: row.number, since: row.waitingSince ?? new Date(0), exerciseId: row.exerciseId, exerciseTitle: row.exercise.title,
    student: { id: row.student.id, name: fullName(row.student) },
    takenBy: takenOf(viewer, row),
  }))
}

/** A grading form left open this long no longer holds its coupon. */
const TAKEN_MINUTES = 15

/**
 * Marks a coupon as being graded by the viewer, for others to see, unless someone else has it open; it locks nothing.
 *
 * @returns who has it now; null when it does not wait, or is not the viewer's to grade
 */
export async function takeCoupon(viewer: Viewer, couponId: string): Promise<TakenBy> {
  const where = { AND: [{ id: couponId, waitingSince: { not: null } }, gradableCouponScope(viewer)] }
  const now = new Date()
  const free = [{ takenById: null }, { takenById: viewer.personId }, { takenAt: { lte: new Date(now.getTime() - TAKEN_MINUTES * 60 * 1000) } }]
  await db().coupon.updateMany({ where: { AND: [where, { OR: free }] }, data: { takenById: viewer.personId, takenAt: now } })
  const row = await db().coupon.findFirst({ where, select: { takenById: true, takenAt: true, takenBy: { select: { givenName: true, familyName: true } } } })
  return row && takenOf(viewer, row)
}

/** The passes of the viewer's last coupon in an exercise, to prefill the next one. */
export async function lastPasses(viewer: Viewer, exerciseId: string): Promise<PassSettings[]> {
  const row = await db().coupon.findFirst({
    where: { programId: viewer.programId, studentId: viewer.personId, exerciseId },
    orderBy: { number: 'desc' },
    select: { passes: { orderBy: { sequence: 'asc' } } },
  })
  return row?.passes.map(toPass) ?? []
}

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
import { couponScope, inspectionScope, secondLookScope, settledCouponScope } from './scope'
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

/** A look with who made it, what it came to, and a verdict decided over it. */
export const lookInclude = {
  include: {
    inspector: { select: { givenName: true, familyName: true } },
    scorecard: { include: { findings: true, override: { include: { by: { select: { givenName: true, familyName: true } } } } } },
  },
  orderBy: { submittedAt: 'asc' },
} as const

/** A coupon with all that was recorded of it; which looks a reader may see, each query says for itself. */
export const couponInclude = {
  class: { select: { id: true, name: true } },
  student: { select: { id: true, givenName: true, familyName: true } },
  exercise: true,
  passes: { orderBy: { sequence: 'asc' } },
  inspections: lookInclude,
  photos: { orderBy: { createdAt: 'asc' } },
} as const

export type CouponRow = Prisma.CouponGetPayload<{ include: typeof couponInclude }>

const toPass = (row: CouponRow['passes'][number]): PassSettings => ({
  amps: row.amps, volts: row.volts, wireFeedMmPerS: row.wireFeedMmPerS, contactTipToWorkMm: row.contactTipToWorkMm,
  polarity: POLARITIES.find((each) => each === row.polarity) ?? null, gas: row.gas, arcSeconds: row.arcSeconds, lengthMm: row.lengthMm,
})

async function toInspections(programId: string, rows: CouponRow['inspections']): Promise<InspectionRecord[]> {
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

type OverrideRow = NonNullable<CouponRow['inspections'][number]['scorecard']>['override']
const toOverride = (row: OverrideRow): OverrideRecord | null =>
  row && row.verdict !== 'incomplete' ? { verdict: row.verdict, reason: row.reason, by: fullName(row.by), at: row.createdAt } : null

/** A row as the record that pages know. */
export async function toCoupon(row: CouponRow): Promise<CouponRecord> {
  return {
    ...toLine(row),
    classId: row.class.id, className: row.class.name,
    student: { id: row.student.id, name: fullName(row.student) },
    booth: row.booth, note: row.note, exercise: toExercise(row.exercise), passes: row.passes.map(toPass),
    inspections: await toInspections(row.programId, row.inspections),
    photos: row.photos.map((photo) => ({ id: photo.id, widthPx: photo.widthPx, heightPx: photo.heightPx, at: photo.createdAt })),
  }
}

type LineRow = Pick<CouponRow, 'id' | 'number' | 'weldedAt' | 'receivedAt' | 'verdict' | 'mark' | 'selfVerdict' | 'selfMark' | 'waitingSince'>
const toLine = (row: LineRow): CouponLine => ({
  id: row.id, number: row.number, weldedAt: row.weldedAt, receivedAt: row.receivedAt,
  verdict: row.verdict, mark: row.mark, selfVerdict: row.selfVerdict, selfMark: row.selfMark, waiting: row.waitingSince !== null,
})

/**
 * A coupon with all of it that the viewer may see, or null when it does not exist or is not theirs to see; to someone who may still have
 * to read it a second time it is not.
 */
export async function findCoupon(viewer: Viewer, couponId: string): Promise<CouponRecord | null> {
  const row = await db().coupon.findFirst({
    where: { AND: [{ id: couponId }, couponScope(viewer), { NOT: secondLookScope(viewer) }] },
    include: { ...couponInclude, inspections: { ...lookInclude, where: inspectionScope(viewer) } },
  })
  return row && toCoupon(row)
}

export type StoryCoupon = CouponLine & {
  /** The inspection that counts: the instructor's if there is one, else the student's own; null for others while a coupon waits for their look. */
  readonly counts: Pick<InspectionRecord, 'kind' | 'readings' | 'scorecard' | 'override'> | null
  readonly exercise: ExerciseRecord
}

/** Every coupon has its student's look at least: where none may be read, neither may what they came to. */
const NOTHING_SEEN = { verdict: null, mark: null, selfVerdict: null, selfMark: null, waiting: true } as const

/**
 * The latest coupons of one student in one exercise, oldest first, each with the inspection that counts. Of a coupon that waits for an
 * instructor's look only the student sees their own: the instructor's must come first and of itself. To someone who may have to read a
 * graded coupon a second time, it looks like one that waits.
 */
export async function listStory(viewer: Viewer, key: { studentId: string; exerciseId: string }, most: number): Promise<StoryCoupon[]> {
  const rows = await db().coupon.findMany({
    where: { AND: [{ studentId: key.studentId, exerciseId: key.exerciseId }, couponScope(viewer)] },
    orderBy: { number: 'desc' },
    take: most,
    include: {
      exercise: true,
      inspections: { ...lookInclude, where: { supersededAt: null, kind: { in: ['self', 'instructor'] }, coupon: settledCouponScope(viewer) } },
    },
  })
  const story: StoryCoupon[] = []
  for (const row of rows.reverse()) {
    const inspections = await toInspections(row.programId, row.inspections)
    const counts = inspections.find((each) => each.kind === 'instructor') ?? inspections.find((each) => each.kind === 'self') ?? null
    story.push({ ...toLine(row), ...(inspections.length === 0 && NOTHING_SEEN), counts, exercise: toExercise(row.exercise) })
  }
  return story
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

import 'server-only'
import { shortTitle } from '@/lib/procedure/exercise'
import { fullName } from '@/lib/reports/full-name'
import type { WidthAt } from '@/lib/reports/width-differences'
import { readStoredReadings } from '@/lib/schemas/readings'
import type { FindingVerdict, Verdict } from '@/lib/scoring/types'
import type { InspectionKind, Prisma } from '@/prisma/generated/client'
import { hasRole, type Viewer } from '../auth/viewer'
import { db } from '../db'
import { FINDING_VERDICTS } from './scorecards'
import { settledCouponScope, staffClassScope } from './scope'

/** What one person saw: the verdict and findings as computed from their readings, and the widths they measured. */
export type LookOfReader = {
  readonly reader: { readonly id: string; readonly name: string }
  readonly criteria: { readonly id: string; readonly version: number }
  readonly verdict: Verdict
  readonly findings: readonly { readonly rule: string; readonly verdict: FindingVerdict }[]
  readonly widths: readonly WidthAt[]
}

/** A coupon that two people looked at. */
export type ComparedCoupon = {
  readonly couponId: string
  /** '3F up lap' */
  readonly exercise: string
  readonly number: number
  /** Whose it is; null where the viewer neither teaches the class nor coordinates, and need not know. */
  readonly student: string | null
  /** Whether the viewer teaches its class now. */
  readonly taught: boolean
  /** The instructor's verdict that stands, decided or computed; what the student was told. */
  readonly standing: Verdict | null
  readonly first: LookOfReader
  readonly second: LookOfReader
}

/** Coupons of a term; of any where it is null. */
const ofTerm = (termId: string | null): Prisma.CouponWhereInput => (termId === null ? {} : { class: { termId } })

/**
 * Coupons of the program that a second person read, newest first: the instructor's look as it stood when the second reading was given, for
 * whoever corrected it later had seen both, and that reading. For the coordinator. One's own coupons are never among them: students do not
 * hear of second readings.
 */
export async function listReadTwice(viewer: Viewer, { termId }: { readonly termId: string | null }, most: number): Promise<ComparedCoupon[]> {
  const { programId, personId } = viewer
  if (!hasRole(viewer, 'coordinator')) return []
  return compared(viewer, { AND: [{ programId, NOT: { studentId: personId } }, ofTerm(termId)] }, READ_TWICE, most)
}

/** The same for an instructor: only coupons of which they are one of the two readers, whoever's class they were of. */
export async function listOwnReadTwice(viewer: Viewer, most: number): Promise<ComparedCoupon[]> {
  const { programId, personId } = viewer
  if (!hasRole(viewer, 'instructor')) return []
  const own: Prisma.CouponWhereInput = { inspections: { some: { inspectorId: personId, kind: { in: ['instructor', 'second'] } } } }
  const listed = await compared(viewer, { AND: [{ programId, NOT: { studentId: personId } }, own] }, READ_TWICE, most)
  return listed.filter(({ first, second }) => first.reader.id === personId || second.reader.id === personId)
}

/** Whose own looks: of the students of a class, or of the program in one term or all. */
export type SelfLooksOf = { readonly classId: string } | { readonly termId: string | null }

/**
 * Coupons that both their student and an instructor looked at, newest first; the student's look is the first. For the staff: of classes an
 * instructor teaches, all for a coordinator. What still waits for a look the viewer might give is left out: that look is blind.
 */
export async function listSelfCompared(viewer: Viewer, of: SelfLooksOf, most: number): Promise<ComparedCoupon[]> {
  const { programId, personId } = viewer
  const which: Prisma.CouponWhereInput = 'classId' in of ? { classId: of.classId } : ofTerm(of.termId)
  return compared(viewer, { AND: [{ programId, class: staffClassScope(viewer), NOT: { studentId: personId } }, which, settledCouponScope(viewer)] }, OWN_AND_INSTRUCTORS, most)
}

/** Two kinds of looks, and the two that are compared of those a coupon has. */
type Kinds = { readonly kinds: readonly [InspectionKind, InspectionKind]; readonly pick: (looks: readonly LookRow[]) => readonly [LookRow | undefined, LookRow | undefined] }

const standing = (looks: readonly LookRow[], kind: InspectionKind): LookRow | undefined => looks.find((look) => look.kind === kind && look.supersededAt === null)
const OWN_AND_INSTRUCTORS: Kinds = { kinds: ['self', 'instructor'], pick: (looks) => [standing(looks, 'self'), standing(looks, 'instructor')] }
const READ_TWICE: Kinds = {
  kinds: ['instructor', 'second'],
  pick: (looks) => {
    const second = standing(looks, 'second')
    const before = looks.filter(({ kind, submittedAt }) => kind === 'instructor' && second && submittedAt <= second.submittedAt)
    return [before.toSorted((a, b) => b.revision - a.revision)[0], second]
  },
}

async function compared(viewer: Viewer, where: Prisma.CouponWhereInput, { kinds: [one, other], pick }: Kinds, most: number): Promise<ComparedCoupon[]> {
  const { programId, personId } = viewer
  const has = (kind: InspectionKind): Prisma.CouponWhereInput => ({ inspections: { some: { kind, supersededAt: null, scorecard: { isNot: null } } } })
  const rows = await db().coupon.findMany({
    where: { AND: [where, has(one), has(other)] },
    orderBy: [{ receivedAt: 'desc' }, { id: 'desc' }], take: most,
    select: {
      id: true, number: true, verdict: true, exercise: { select: { position: true, progression: true, joint: true } }, student: { select: { givenName: true, familyName: true } },
      class: { select: { instructors: { where: { programId, personId }, select: { personId: true } } } },
      inspections: {
        where: { kind: { in: [one, other] } },
        select: {
          kind: true, revision: true, submittedAt: true, supersededAt: true, readings: true, inspector: { select: { id: true, givenName: true, familyName: true } },
          scorecard: { select: { criteriaId: true, criteriaVersion: true, verdict: true, findings: { select: { rule: true, verdict: true } } } },
        },
      },
    },
  })
  return rows.flatMap(({ id, number, verdict, exercise, student, class: { instructors }, inspections }) => {
    const [first, second] = pick(inspections).map(toLook)
    if (!first || !second || first.reader.id === second.reader.id) return []
    const taught = instructors.length > 0
    return { couponId: id, exercise: shortTitle(exercise), number, student: taught || hasRole(viewer, 'coordinator') ? fullName(student) : null, taught, standing: verdict, first, second }
  })
}

type LookRow = {
  readonly kind: InspectionKind
  readonly revision: number
  readonly submittedAt: Date
  readonly supersededAt: Date | null
  readonly readings: unknown
  readonly inspector: { readonly id: string; readonly givenName: string; readonly familyName: string }
  readonly scorecard: { readonly criteriaId: string; readonly criteriaVersion: number; readonly verdict: Verdict; readonly findings: readonly { readonly rule: string; readonly verdict: keyof typeof FINDING_VERDICTS }[] } | null
}

function toLook(row: LookRow | undefined): LookOfReader | null {
  if (!row?.scorecard) return null
  const { criteriaId, criteriaVersion, verdict, findings } = row.scorecard
  return {
    reader: { id: row.inspector.id, name: fullName(row.inspector) }, criteria: { id: criteriaId, version: criteriaVersion }, verdict,
    findings: findings.map((finding) => ({ rule: finding.rule, verdict: FINDING_VERDICTS[finding.verdict] })),
    widths: readStoredReadings(row.readings).inspection.stations.flatMap(({ atMm, widthMm }) => (widthMm === undefined ? [] : [{ atMm, widthMm }])),
  }
}

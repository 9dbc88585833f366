import 'server-only'
import { fullName } from '@/lib/reports/full-name'
import type { WidthReading } from '@/lib/reports/gauge-study-figures'
import type { Turn } from '@/lib/reports/gauge-study-order'
import { closingOf, type Closing, type StudyReader } from '@/lib/reports/gauge-study-progress'
import type { NewStudy } from '@/lib/schemas/gauge-study'
import type { Prisma } from '@/prisma/generated/client'
import { hasRole, type Viewer } from '../auth/viewer'
import { db, isTaken, type Transaction } from '../db'
import { notFound, Refusal } from '../refusal'
import { recordAudit } from './audit'
import { toExercise, type ExerciseRecord } from './exercises'
import { coordinatedScope, gradableCouponScope, taughtClassScope } from './scope'

/* Several people measure the same coupons more than once. Until a study is closed nobody is shown a width, not even their own. */

/** A coupon of a study, in its place on the bench. */
export type StudyCoupon = { readonly id: string; readonly sequence: number; readonly student: string; readonly number: number; readonly exercise: ExerciseRecord }

export type StudyRecord = {
  readonly id: string
  readonly name: string
  readonly rounds: number
  readonly classId: string
  readonly className: string
  readonly archived: boolean
  readonly openedBy: string
  readonly createdAt: Date
  readonly closedAt: Date | null
  readonly coupons: readonly StudyCoupon[]
  readonly readers: readonly StudyReader[]
  /** Empty until the study is closed. */
  readonly readings: readonly WidthReading[]
}

/** One line of a list of studies. `finished` and `readers` count those who have read everything, and those who read or have begun. */
export type StudyLine = {
  readonly id: string
  readonly name: string
  readonly rounds: number
  readonly coupons: number
  readonly className: string
  readonly term: string
  readonly archived: boolean
  readonly createdAt: Date
  readonly closedAt: Date | null
  readonly own: { readonly reads: boolean; readonly done: number }
  readonly finished: number
  readonly readers: number
}

/** A coupon a study may be made of. */
export type CouponChoice = { readonly id: string; readonly number: number; readonly student: string; readonly receivedAt: Date; readonly exerciseId: string; readonly exerciseTitle: string }

/** Studies of classes the viewer teaches: who is taken off a class reads there no more. */
const taughtStudies = (viewer: Viewer): Prisma.GaugeStudyWhereInput => ({ programId: viewer.programId, class: taughtClassScope(viewer) })
const programStudies = (viewer: Viewer): Prisma.GaugeStudyWhereInput => ({ programId: viewer.programId, class: { term: { program: coordinatedScope(viewer) } } })
/** Studies a viewer may see and close: of classes they teach, all for a coordinator. */
const studyScope = (viewer: Viewer): Prisma.GaugeStudyWhereInput => (hasRole(viewer, 'coordinator') ? programStudies(viewer) : taughtStudies(viewer))

const names = { givenName: true, familyName: true } as const
/** The instructors of a class who can sign in. */
const activeInstructors = {
  where: { person: { disabledAt: null, memberships: { some: { role: 'instructor' } } } },
  select: { person: { select: { id: true, ...names } } },
} as const satisfies Prisma.Class$instructorsArgs

type Reading = Turn & { readonly readerId: string; readonly reader: { readonly givenName: string; readonly familyName: string } }

/** Everyone who reads or has begun, by name. */
function readersOf(instructors: readonly { person: { id: string; givenName: string; familyName: string } }[], readings: readonly Reading[]): StudyReader[] {
  const people = new Map(instructors.map(({ person }) => [person.id, { id: person.id, name: fullName(person), reads: true, done: [] as Turn[] }]))
  for (const { readerId, reader, couponId, round } of readings) {
    const known = people.get(readerId) ?? { id: readerId, name: fullName(reader), reads: false, done: [] }
    known.done.push({ couponId, round })
    people.set(readerId, known)
  }
  return [...people.values()].sort((a, b) => a.name.localeCompare(b.name, 'en') || (a.id < b.id ? -1 : 1))
}

const turns = { couponId: true, round: true, readerId: true, reader: { select: names } } as const

/** A study, or null when it does not exist or is not the viewer's to see. */
export async function findStudy(viewer: Viewer, studyId: string): Promise<StudyRecord | null> {
  const row = await db().gaugeStudy.findFirst({
    where: { AND: [{ id: studyId }, studyScope(viewer)] },
    select: {
      id: true, name: true, rounds: true, createdAt: true, closedAt: true, openedBy: { select: names },
      class: { select: { id: true, name: true, archivedAt: true, instructors: activeInstructors } },
      coupons: { orderBy: { sequence: 'asc' }, select: { sequence: true, coupon: { select: { id: true, number: true, student: { select: names }, exercise: true } } } },
    },
  })
  if (!row) return null
  const where = { programId: viewer.programId, studyId }
  const done = await db().studyReading.findMany({ where, select: turns })
  const { class: of, openedBy, coupons, ...study } = row
  return {
    ...study, classId: of.id, className: of.name, archived: of.archivedAt !== null, openedBy: fullName(openedBy),
    coupons: coupons.map(({ sequence, coupon }) => ({ id: coupon.id, sequence, student: fullName(coupon.student), number: coupon.number, exercise: toExercise(coupon.exercise) })),
    readers: readersOf(of.instructors, done),
    readings: study.closedAt === null ? [] : await db().studyReading.findMany({ where, select: { couponId: true, readerId: true, round: true, widthMm: true } }),
  }
}

/** More studies than a list needs; the open ones come first. */
const MOST_STUDIES = 100

/** The studies of the classes the viewer teaches, open ones first, then the latest. */
export const listTaughtStudies = (viewer: Viewer): Promise<StudyLine[]> => linesOf(viewer, taughtStudies(viewer))

/** Every study of the program, open ones first, then the latest. For the coordinator; empty for anyone else. */
export const listProgramStudies = (viewer: Viewer): Promise<StudyLine[]> => linesOf(viewer, programStudies(viewer))

async function linesOf({ programId, personId }: Viewer, where: Prisma.GaugeStudyWhereInput): Promise<StudyLine[]> {
  const rows = await db().gaugeStudy.findMany({
    where, orderBy: [{ closedAt: { sort: 'desc', nulls: 'first' } }, { createdAt: 'desc' }, { id: 'desc' }], take: MOST_STUDIES,
    select: {
      id: true, name: true, rounds: true, createdAt: true, closedAt: true, _count: { select: { coupons: true } },
      class: { select: { name: true, archivedAt: true, term: { select: { name: true } }, instructors: activeInstructors } },
    },
  })
  const counts = await db().studyReading.groupBy({ by: ['studyId', 'readerId'], where: { programId, studyId: { in: rows.map(({ id }) => id) } }, _count: { _all: true } })
  return rows.map(({ class: of, _count, ...study }) => {
    const done = new Map(counts.filter(({ studyId }) => studyId === study.id).map(({ readerId, _count: { _all } }) => [readerId, _all]))
    const instructors = of.instructors.map(({ person }) => person.id)
    return {
      ...study, coupons: _count.coupons, className: of.name, term: of.term.name, archived: of.archivedAt !== null,
      own: { reads: instructors.includes(personId), done: done.get(personId) ?? 0 },
      finished: [...done.values()].filter((each) => each >= study.rounds * _count.coupons).length,
      readers: new Set([...instructors, ...done.keys()]).size,
    }
  })
}

/** What still lies about of a class: no more than these are offered. */
const MOST_CHOICES = 300

/** The latest coupons of a class the viewer teaches, newest first; empty for anyone else. */
export async function listCouponChoices(viewer: Viewer, classId: string): Promise<CouponChoice[]> {
  const rows = await db().coupon.findMany({
    where: { AND: [{ classId }, gradableCouponScope(viewer)] }, orderBy: [{ receivedAt: 'desc' }, { id: 'desc' }], take: MOST_CHOICES,
    select: { id: true, number: true, receivedAt: true, exerciseId: true, student: { select: names }, exercise: { select: { title: true } } },
  })
  return rows.map(({ student, exercise, ...row }) => ({ ...row, student: fullName(student), exerciseTitle: exercise.title }))
}

/**
 * Opens a study of coupons of a class the viewer teaches. The id is the form's, so sending it again opens nothing new.
 *
 * @throws Refusal NOT_FOUND for a class that is not theirs and for a coupon of another one, CONFLICT where the class is archived
 */
export async function openStudy(viewer: Viewer, input: NewStudy): Promise<{ id: string; created: boolean }> {
  const { programId, personId } = viewer
  const { id, classId, name, rounds, couponIds } = input
  const standing = async () => {
    const study = await db().gaugeStudy.findFirst({ where: { AND: [{ id, classId, openedById: personId }, taughtStudies(viewer)] }, select: { id: true } })
    return study && { id, created: false }
  }
  const before = await standing()
  if (before) return before
  try {
    return await db().$transaction(async (tx) => {
      const taught = await tx.class.findFirst({ where: { AND: [{ id: classId }, taughtClassScope(viewer)] }, select: { archivedAt: true } })
      const there = await tx.coupon.count({ where: { AND: [{ classId, id: { in: [...couponIds] } }, gradableCouponScope(viewer)] } })
      if (!taught || there !== couponIds.length) throw notFound()
      if (taught.archivedAt !== null) throw new Refusal('CONFLICT', 'The class is archived. No study is opened in it any more.')
      await tx.gaugeStudy.create({ data: { programId, id, classId, name, rounds, openedById: personId } })
      await tx.gaugeStudyCoupon.createMany({ data: couponIds.map((couponId, index) => ({ programId, studyId: id, couponId, sequence: index + 1 })) })
      await recordAudit(tx, viewer, { action: 'study.open', subject: { type: 'study', id }, after: { classId, name, rounds, couponIds: [...couponIds] } })
      return { id, created: true }
    })
  } catch (error) {
    if (!isTaken(error)) throw error
    // Sent twice at the same moment; or the id is of a study elsewhere, of which nothing is told.
    const first = await standing()
    if (!first) throw notFound()
    return first
  }
}

/** Holds a study against its closing (share) or against new readings (update) until the transaction is over. */
export async function holdStudy(tx: Transaction, programId: string, studyId: string, how: 'share' | 'update'): Promise<void> {
  if (how === 'share') await tx.$queryRaw`select 1 as held from "GaugeStudy" where "programId" = ${programId}::uuid and id = ${studyId}::uuid for share`
  else await tx.$queryRaw`select 1 as held from "GaugeStudy" where "programId" = ${programId}::uuid and id = ${studyId}::uuid for update`
}

/**
 * Closes a study: its widths are shown, and nothing more is read. `as` is what the page said closing would come to; where that is no longer
 * so, it is said instead of done. Closed meanwhile by someone else, it stays as it is.
 *
 * @throws Refusal NOT_FOUND for anyone but the instructors of the class and the coordinator, CONFLICT where the state has changed
 */
export async function closeStudy(viewer: Viewer, { studyId, as }: { readonly studyId: string; readonly as: Closing }): Promise<void> {
  const { programId } = viewer
  await db().$transaction(async (tx) => {
    await holdStudy(tx, programId, studyId, 'update')
    const study = await tx.gaugeStudy.findFirst({
      where: { AND: [{ id: studyId }, studyScope(viewer)] },
      select: { id: true, rounds: true, closedAt: true, class: { select: { instructors: activeInstructors } }, coupons: { orderBy: { sequence: 'asc' }, select: { couponId: true } } },
    })
    if (!study) throw notFound()
    if (study.closedAt !== null) return
    const done = await tx.studyReading.findMany({ where: { programId, studyId }, select: turns })
    const now = closingOf({ ...study, couponIds: study.coupons.map(({ couponId }) => couponId) }, readersOf(study.class.instructors, done))
    if (now !== as) throw new Refusal('CONFLICT', 'Who reads or what was read has changed meanwhile. Look at the study again before you close it.')
    await tx.gaugeStudy.update({ where: { programId_id: { programId, id: studyId } }, data: { closedAt: new Date() } })
    await recordAudit(tx, viewer, { action: 'study.close', subject: { type: 'study', id: studyId }, after: { as, readings: done.length } })
  })
}

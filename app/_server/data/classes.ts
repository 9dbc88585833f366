import 'server-only'
import { fullName } from '@/lib/reports/full-name'
import type { Viewer } from '../auth/viewer'
import { db } from '../db'
import { classScope, staffClassScope, studentScope, taughtClassScope, waitingCouponScope } from './scope'

export type ClassRecord = {
  readonly id: string
  readonly name: string
  readonly room: string | null
  readonly meets: string | null
  /** Its record stands; nothing new is logged in it. What waits in it may still be looked at. */
  readonly archived: boolean
  readonly term: { readonly id: string; readonly name: string; readonly startsOn: Date; readonly endsOn: Date }
  readonly instructors: readonly { readonly id: string; readonly name: string }[]
}

export type EnrolledStudent = {
  readonly id: string
  readonly givenName: string
  readonly familyName: string
  readonly booth: number | null
  readonly signInName: string
  readonly joinedAt: Date
}

const select = {
  id: true, name: true, room: true, meets: true, archivedAt: true,
  term: { select: { id: true, name: true, startsOn: true, endsOn: true } },
  instructors: { select: { person: { select: { id: true, givenName: true, familyName: true } } } },
} as const

type Row = Omit<ClassRecord, 'instructors' | 'archived'> & { archivedAt: Date | null; instructors: { person: { id: string; givenName: string; familyName: string } }[] }

const toClass = ({ archivedAt, ...row }: Row): ClassRecord => ({
  ...row,
  archived: archivedAt !== null,
  instructors: row.instructors.map(({ person }) => ({ id: person.id, name: fullName(person) })),
})

/** The viewer's classes, newest term first. */
export async function listClasses(viewer: Viewer): Promise<ClassRecord[]> {
  const rows = await db().class.findMany({
    where: { AND: [classScope(viewer), { archivedAt: null }] },
    orderBy: [{ term: { startsOn: 'desc' } }, { name: 'asc' }],
    select,
  })
  return rows.map(toClass)
}

/** A class, or null when it does not exist or is not the viewer's to see. */
export async function findClass(viewer: Viewer, classId: string): Promise<ClassRecord | null> {
  const row = await db().class.findFirst({ where: { AND: [{ id: classId }, classScope(viewer)] }, select })
  return row && toClass(row)
}

/** A class the viewer teaches, or null. */
export async function findTaughtClass(viewer: Viewer, classId: string): Promise<ClassRecord | null> {
  const row = await db().class.findFirst({ where: { AND: [{ id: classId }, taughtClassScope(viewer)] }, select })
  return row && toClass(row)
}

/** A class whose course and papers the viewer keeps, or null: those an instructor teaches, any of the program for a coordinator. */
export async function findStaffClass(viewer: Viewer, classId: string): Promise<ClassRecord | null> {
  const row = await db().class.findFirst({ where: { AND: [{ id: classId }, staffClassScope(viewer)] }, select })
  return row && toClass(row)
}

/** Archived classes the viewer teaches in which something still waits for their look, newest term first. */
export async function listArchivedWaiting(viewer: Viewer): Promise<ClassRecord[]> {
  const rows = await db().class.findMany({
    where: { AND: [taughtClassScope(viewer), { archivedAt: { not: null }, coupons: { some: waitingCouponScope(viewer) } }] },
    orderBy: [{ term: { startsOn: 'desc' } }, { name: 'asc' }],
    select,
  })
  return rows.map(toClass)
}

/** Classes in which the viewer is an active student, newest term first. */
export async function listOwnClasses(viewer: Viewer): Promise<(ClassRecord & { booth: number | null })[]> {
  const { programId, personId } = viewer
  const rows = await db().class.findMany({
    where: { programId, archivedAt: null, enrolments: { some: { programId, personId, withdrawnAt: null } } },
    orderBy: [{ term: { startsOn: 'desc' } }, { name: 'asc' }],
    select: { ...select, enrolments: { where: { programId, personId }, select: { booth: true } } },
  })
  return rows.map(({ enrolments, ...row }) => ({ ...toClass(row), booth: enrolments[0]?.booth ?? null }))
}

/** The classes a student is or was in, latest term first, as far as the viewer can see them. Empty when the student is not theirs to see. */
export async function listStudentClasses(viewer: Viewer, studentId: string): Promise<ClassRecord[]> {
  const enrolled = { some: { programId: viewer.programId, personId: studentId, person: studentScope(viewer) } }
  const rows = await db().class.findMany({
    where: { AND: [classScope(viewer), { enrolments: enrolled }] },
    orderBy: [{ term: { startsOn: 'desc' } }, { name: 'asc' }],
    select,
  })
  return rows.map(toClass)
}

/** Active students of a class by booth, then name. Staff only; empty for anyone else. */
export async function listClassStudents(viewer: Viewer, classId: string): Promise<EnrolledStudent[]> {
  const rows = await db().enrolment.findMany({
    where: { programId: viewer.programId, classId, withdrawnAt: null, class: staffClassScope(viewer) },
    orderBy: [{ booth: { sort: 'asc', nulls: 'last' } }, { person: { familyName: 'asc' } }],
    select: { booth: true, joinedAt: true, person: { select: { id: true, givenName: true, familyName: true, signInName: true } } },
  })
  return rows.map(({ booth, joinedAt, person }) => ({ ...person, booth, joinedAt }))
}

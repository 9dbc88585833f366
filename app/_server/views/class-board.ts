import 'server-only'
import { standing, type Standing } from '@/lib/reports/standing'
import { momentText } from '@/lib/reports/dates'
import { writeCode } from '@/lib/schemas/person'
import { shortTitle } from '@/lib/procedure/exercise'
import { formatForReader } from '@/lib/units/display'
import type { Viewer } from '../auth/viewer'
import { findTaughtClass, listClasses, listClassStudents, type ClassRecord, type EnrolledStudent } from '../data/classes'
import { listWaiting, type WaitingCoupon } from '../data/coupon-record'
import { listClassExercises } from '../data/exercises'
import { findClassCode } from '../data/people'
import { findProgram, type ProgramRecord } from '../data/program'
import { listClassSkills, type SkillRecord } from '../data/skills'

/** `notes` are the wire or rod, and its size. */
export type BoardColumn = { readonly id: string; readonly title: string; readonly notes: readonly string[] }
export type BoardCell = { readonly standing: Standing; readonly waiting: number }
export type BoardRow = { readonly student: EnrolledStudent; readonly name: string; readonly lastSeen: string | null; readonly cells: readonly BoardCell[] }
export type ClassBoard = {
  readonly classRecord: ClassRecord
  readonly columns: readonly BoardColumn[]
  readonly rows: readonly BoardRow[]
  readonly waiting: readonly (WaitingCoupon & { readonly since: Date; readonly sinceText: string })[]
  readonly code: { readonly code: string; readonly until: string } | null
}

/** The class as its instructor sees it: who stands where, and what waits. null when the viewer does not teach it. */
export async function classBoard(viewer: Viewer, classId: string): Promise<ClassBoard | null> {
  const classRecord = await findTaughtClass(viewer, classId)
  if (!classRecord) return null
  const [students, exercises, skills, waiting, code, program] = await Promise.all([
    listClassStudents(viewer, classId), listClassExercises(viewer, classId), listClassSkills(viewer, classId),
    listWaiting(viewer, classId), findClassCode(viewer, classId), findProgram(viewer),
  ])
  const bySkill = new Map(skills.map((skill) => [`${skill.studentId} ${skill.exerciseId}`, skill]))
  const columns = exercises.map(({ exercise }) => ({
    id: exercise.id, title: shortTitle(exercise),
    notes: [exercise.electrodeClass, ...(exercise.electrodeDiameterMm === null ? [] : [formatForReader(exercise.electrodeDiameterMm, viewer.units)])],
  }))
  return {
    classRecord, columns,
    rows: students.map((student) => rowOf(student, columns, bySkill, program, viewer)),
    waiting: waiting.map((coupon) => ({ ...coupon, sinceText: momentText(coupon.since, viewer.locale, program.timeZone) })),
    code: code && { code: writeCode(code.code), until: momentText(code.expiresAt, viewer.locale, program.timeZone) },
  }
}

function rowOf(student: EnrolledStudent, columns: readonly BoardColumn[], skills: ReadonlyMap<string, SkillRecord>, program: ProgramRecord, viewer: Viewer): BoardRow {
  const mine = columns.map((column) => skills.get(`${student.id} ${column.id}`))
  const last = mine.reduce<Date | null>((latest, skill) => (skill?.lastCouponAt && (!latest || skill.lastCouponAt > latest) ? skill.lastCouponAt : latest), null)
  return {
    student,
    name: `${student.givenName} ${student.familyName}`,
    lastSeen: last && momentText(last, viewer.locale, program.timeZone),
    cells: mine.map((skill) => ({ standing: standing(skill, program.minimumCoupons, viewer.locale), waiting: skill?.waitingCount ?? 0 })),
  }
}

export type TaughtClass = { readonly record: ClassRecord; readonly students: number; readonly waiting: number }

/** The classes an instructor teaches, with what waits in each. */
export async function taughtClasses(viewer: Viewer): Promise<TaughtClass[]> {
  const classes = await listClasses(viewer)
  const taught = classes.filter((each) => each.instructors.some(({ id }) => id === viewer.personId))
  return Promise.all(taught.map(async (record) => ({
    record, students: (await listClassStudents(viewer, record.id)).length, waiting: (await listWaiting(viewer, record.id)).length,
  })))
}

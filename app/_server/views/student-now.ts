import 'server-only'
import { momentText } from '@/lib/reports/dates'
import type { Viewer } from '../auth/viewer'
import { listClassStudents, listStudentClasses, type ClassRecord } from '../data/classes'
import { listClassExercises } from '../data/exercises'
import { findProgram } from '../data/program'
import { listQueue } from '../data/queue'
import { listStudentSkills } from '../data/skills'
import { classToday } from './class-today'

/** What a student needs of the viewer in one class: why, in sentences, and the coupons that wait. `taken`: who has one open. */
export type StudentNow = {
  readonly classId: string
  readonly className: string
  readonly reasons: readonly string[]
  readonly asked: boolean
  readonly waiting: readonly { readonly id: string; readonly what: string; readonly since: string; readonly taken: string | null }[]
}

/** What one student needs today in each class of theirs that the viewer teaches, by the same rules as the class page. Empty for anyone else. */
export async function studentNow(viewer: Viewer, studentId: string, asOf: Date): Promise<StudentNow[]> {
  const classes = await listStudentClasses(viewer, studentId)
  const taught = classes.filter(({ instructors }) => instructors.some(({ id }) => id === viewer.personId))
  return (await Promise.all(taught.map((each) => nowIn(viewer, each, studentId, asOf)))).filter((each) => each !== null)
}

async function nowIn(viewer: Viewer, classRecord: ClassRecord, studentId: string, asOf: Date): Promise<StudentNow | null> {
  const [students, exercises, skills, queue, { timeZone }] = await Promise.all([
    listClassStudents(viewer, classRecord.id), listClassExercises(viewer, classRecord.id), listStudentSkills(viewer, studentId, asOf), listQueue(viewer, classRecord.id), findProgram(viewer),
  ])
  const ofClass = new Set(exercises.map(({ exercise }) => exercise.id))
  const needs = await classToday(viewer, {
    classRecord, exercises, queue, timeZone, students: students.filter(({ id }) => id === studentId), skills: skills.filter(({ exerciseId }) => ofClass.has(exerciseId)),
  }, asOf)
  const own = queue.filter(({ student }) => student.id === studentId)
  const waiting = own.flatMap((entry) => (entry.kind === 'coupon' ? [{
    id: entry.id, what: `${entry.exerciseTitle}, no.\u00a0${entry.number}`, since: momentText(entry.since, 'en', timeZone),
    taken: entry.takenBy && !entry.takenBy.self ? `${entry.takenBy.name} has it open.` : null,
  }] : []))
  const reasons = needs.flatMap((row) => row.reasons)
  if (reasons.length === 0 && waiting.length === 0) return null
  return { classId: classRecord.id, className: classRecord.name, reasons, asked: own.some(({ kind }) => kind === 'look'), waiting }
}

import 'server-only'
import { shortTitle } from '@/lib/procedure/exercise'
import { printedText } from '@/lib/reports/dates'
import { fullName } from '@/lib/reports/full-name'
import { inPages } from '@/lib/reports/in-pages'
import { standing, type Standing } from '@/lib/reports/standing'
import { CAUTIONS_VERSION } from '@/lib/safety/cautions'
import type { Viewer } from '../auth/viewer'
import { findStaffClass, listClassStudents } from '../data/classes'
import { listClassExercises } from '../data/exercises'
import { findProgram } from '../data/program'
import { listUnsignedCautions } from '../data/safety'
import { listClassSkills } from '../data/skills'

/** What a sheet of either size has room for. */
const STUDENTS_A_PAGE = 12
const EXERCISES_A_PAGE = 6

/** One student in one exercise. `standing` has no figure before there is an estimate. */
export type SheetCell = { readonly exerciseId: string; readonly standing: Standing; readonly logged: number; readonly inspected: number; readonly accepted: number; readonly unsigned: boolean }
export type SheetRow = { readonly key: string; readonly name: string; readonly booth: number | null; readonly cells: readonly SheetCell[] }
export type ClassSheetPage = { readonly exercises: readonly { readonly id: string; readonly title: string; readonly wire: string }[]; readonly rows: readonly SheetRow[] }
export type ClassSheet = {
  readonly title: string
  /** Term, class hours, room, program. */
  readonly facts: readonly string[]
  readonly students: number
  readonly exercises: number
  readonly pages: readonly ClassSheetPage[]
  readonly printedAt: string
}

/** A class on paper, students by exercises, as its instructor's board shows it; null when the viewer does not keep it. */
export async function classSheet(viewer: Viewer, classId: string, asOf: Date): Promise<ClassSheet | null> {
  const kept = await findStaffClass(viewer, classId)
  if (!kept) return null
  const [students, listed, skills, unsigned, program] = await Promise.all([
    listClassStudents(viewer, classId), listClassExercises(viewer, classId), listClassSkills(viewer, classId, asOf), listUnsignedCautions(viewer, classId, CAUTIONS_VERSION), findProgram(viewer),
  ])
  const bySkill = new Map(skills.map((skill) => [`${skill.studentId} ${skill.exerciseId}`, skill]))
  const open = new Set(unsigned.flatMap(({ exerciseId, students: who }) => who.map(({ id }) => `${id} ${exerciseId}`)))
  const exercises = listed.map(({ exercise }) => ({ id: exercise.id, title: shortTitle(exercise), wire: exercise.electrodeClass }))
  const rowOf = (student: (typeof students)[number], shown: typeof exercises): SheetRow => ({
    key: student.id, name: fullName(student), booth: student.booth,
    cells: shown.map(({ id: exerciseId }) => {
      const skill = bySkill.get(`${student.id} ${exerciseId}`)
      return {
        exerciseId, standing: standing(skill, program.minimumCoupons, viewer.locale), unsigned: open.has(`${student.id} ${exerciseId}`),
        logged: skill?.couponCount ?? 0, inspected: skill?.inspectedCount ?? 0, accepted: skill?.acceptedCount ?? 0,
      }
    }),
  })
  return {
    title: kept.name, facts: [kept.term.name, kept.meets, kept.room, program.name].filter((fact) => fact !== null),
    students: students.length, exercises: exercises.length,
    pages: inPages(exercises, EXERCISES_A_PAGE).flatMap((shown) =>
      inPages(students, STUDENTS_A_PAGE).map((some) => ({ exercises: shown, rows: some.map((student) => rowOf(student, shown)) }))),
    printedAt: printedText(asOf, viewer.locale, program.timeZone),
  }
}

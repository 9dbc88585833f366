import 'server-only'
import { dateText } from '@/lib/reports/dates'
import { fullName } from '@/lib/reports/full-name'
import { standing, type Standing } from '@/lib/reports/standing'
import { formatTotalTime, seconds } from '@/lib/units/duration'
import type { Viewer } from '../auth/viewer'
import { listClasses } from '../data/classes'
import { findExercise, type ExerciseRecord } from '../data/exercises'
import { findStudent, type PersonRecord } from '../data/people'
import { findProgram, type ProgramRecord } from '../data/program'
import { listStudentSkills, type SkillRecord } from '../data/skills'
import { listAttempts } from '../data/test-attempts'

export type StudentSkill = { readonly exercise: ExerciseRecord; readonly skill: SkillRecord; readonly standing: Standing }
export type StudentRecord = {
  readonly student: PersonRecord
  readonly name: string
  readonly program: ProgramRecord
  readonly classNames: readonly string[]
  /** Exercises practised, the latest first. */
  readonly skills: readonly StudentSkill[]
  readonly coupons: number
  /** null where nobody wrote any down. */
  readonly arcTime: string | null
  readonly from: string | null
  readonly to: string | null
  readonly attempts: readonly { readonly id: string; readonly exerciseId: string; readonly title: string; readonly on: string; readonly passed: boolean }[]
}

/** Everything about one student's practice, for their own pages, their instructor and print; null when not the viewer's to see. */
export async function studentRecord(viewer: Viewer, studentId: string): Promise<StudentRecord | null> {
  const student = await findStudent(viewer, studentId)
  if (!student) return null
  const [program, skills, attempts, classes] = await Promise.all([
    findProgram(viewer), listStudentSkills(viewer, studentId), listAttempts(viewer, studentId), listClasses(viewer),
  ])
  const found = await Promise.all(skills.filter((skill) => skill.couponCount > 0).map(async (skill) => ({ skill, exercise: await findExercise(viewer, skill.exerciseId) })))
  const shown = found.flatMap(({ skill, exercise }) =>
    exercise ? [{ skill, exercise, standing: standing(skill, program.minimumCoupons, viewer.locale) }] : [])
  shown.sort((a, b) => (b.skill.lastCouponAt?.getTime() ?? 0) - (a.skill.lastCouponAt?.getTime() ?? 0))
  const text = (date: Date | null | undefined): string | null => (date ? dateText(date, viewer.locale, program.timeZone) : null)
  const arcSeconds = shown.reduce((sum, { skill }) => sum + skill.arcSeconds, 0)
  return {
    student, program, skills: shown,
    name: fullName(student),
    classNames: student.id === viewer.personId ? classes.map((each) => each.name) : [],
    coupons: shown.reduce((sum, { skill }) => sum + skill.couponCount, 0),
    arcTime: arcSeconds > 0 ? formatTotalTime(seconds(arcSeconds)) : null,
    from: null,
    to: text(shown[0]?.skill.lastCouponAt),
    attempts: attempts.map((each) => ({ id: each.id, exerciseId: each.exerciseId, title: each.exerciseTitle, on: dateText(each.testedOn, viewer.locale, 'UTC'), passed: each.passed })),
  }
}

/** A student's name, for a page's title; null when they are not the viewer's to see. */
export async function studentName(viewer: Viewer, studentId: string): Promise<string | null> {
  const student = await findStudent(viewer, studentId)
  return student && fullName(student)
}

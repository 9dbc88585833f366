import 'server-only'
import { learn } from '@/lib/language/learn'
import { say } from '@/lib/language/say'
import { shortTitle } from '@/lib/procedure/exercise'
import { isBehind, nextUp } from '@/lib/readiness/next-up'
import { calendarDay, dayOfDate } from '@/lib/reports/calendar'
import { standing, type Standing } from '@/lib/reports/standing'
import { formatTotalTime, seconds } from '@/lib/units/duration'
import type { Viewer } from '../auth/viewer'
import { listOwnClasses, type ClassRecord } from '../data/classes'
import { listClassExercises, type ClassExerciseRecord } from '../data/exercises'
import { findProgram } from '../data/program'
import { listStudentSkills, type SkillRecord } from '../data/skills'

export type ExerciseRow = {
  readonly id: string
  readonly title: string
  readonly href: string
  readonly standing: Standing
  readonly counts: string
  /** What must come first, in words; null when the exercise is open. Advice, never a lock. */
  readonly after: string | null
}
export type StudentClass = { readonly id: string; readonly heading: string; readonly term: string; readonly ended: boolean; readonly next: ExerciseRow | null; readonly exercises: readonly ExerciseRow[] }
export type StudentHome = { readonly classes: readonly StudentClass[]; readonly totals: string }

/** The student's classes with their exercises in order, and the one to go on with. */
export async function studentHome(viewer: Viewer, now = new Date()): Promise<StudentHome> {
  const [classes, skills, program] = await Promise.all([listOwnClasses(viewer), listStudentSkills(viewer, viewer.personId), findProgram(viewer)])
  const byExercise = new Map(skills.map((skill) => [skill.exerciseId, skill]))
  const shown = await Promise.all(classes.map(async (each) => studentClass(viewer, each, await listClassExercises(viewer, each.id), byExercise, program.minimumCoupons, calendarDay(now, program.timeZone))))
  const coupons = skills.reduce((sum, skill) => sum + skill.couponCount, 0)
  const time = formatTotalTime(seconds(skills.reduce((sum, skill) => sum + skill.arcSeconds, 0)))
  return { classes: shown, totals: say(learn, viewer.locale, 'totals', { coupons, time }) }
}

function studentClass(
  viewer: Viewer, each: ClassRecord & { booth: number | null }, exercises: readonly ClassExerciseRecord[],
  skills: ReadonlyMap<string, SkillRecord>, minimumCoupons: number, today: number,
): StudentClass {
  const { locale } = viewer
  const titles = new Map(exercises.map(({ exercise }) => [exercise.id, shortTitle(exercise)]))
  const rows = exercises.map(({ exercise, opensAfterId }) => {
    const skill = skills.get(exercise.id)
    const first = opensAfterId !== null && !isBehind(skills.get(opensAfterId)) && !skill ? titles.get(opensAfterId) : undefined
    const row: ExerciseRow = {
      id: exercise.id, title: exercise.title, href: `/learn/${each.id}/${exercise.id}`, standing: standing(skill, minimumCoupons, locale),
      counts: counts(skill, locale), after: first ? say(learn, locale, 'opensAfter', { title: first }) : null,
    }
    return { row, skill }
  })
  return {
    id: each.id,
    heading: each.booth === null ? say(learn, locale, 'noBooth', { name: each.name }) : say(learn, locale, 'classTitle', { name: each.name, booth: each.booth }),
    term: each.term.name,
    ended: dayOfDate(each.term.endsOn) < today,
    next: nextUp(rows)?.row ?? null,
    exercises: rows.map(({ row }) => row),
  }
}

function counts(skill: SkillRecord | undefined, locale: Viewer['locale']): string {
  if (!skill || skill.couponCount === 0) return say(learn, locale, 'notStarted')
  const coupons = skill.couponCount === 1 ? say(learn, locale, 'oneCoupon') : say(learn, locale, 'couponsCount', { n: skill.couponCount })
  if (skill.inspectedCount === 0) return coupons
  return `${coupons}, ${say(learn, locale, 'acceptedOf', { accepted: skill.acceptedCount, inspected: skill.inspectedCount })}`
}

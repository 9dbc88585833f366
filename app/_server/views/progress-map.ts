import 'server-only'
import { myProgress } from '@/lib/language/my-progress'
import { say, type Locale } from '@/lib/language/say'
import { learn } from '@/lib/language/learn'
import type { Process } from '@/lib/procedure/process'
import { shortTitle } from '@/lib/procedure/exercise'
import { isBehind } from '@/lib/readiness/next-up'
import { heatStep, type HeatStep } from '@/lib/reports/readiness-track'
import { skillMap, type SkillMapBlock } from '@/lib/reports/skill-map'
import { standing, type Standing } from '@/lib/reports/standing'
import { wireUsed, type WireUsed } from '@/lib/reports/wire-used'
import { formatTotalTime, seconds } from '@/lib/units/duration'
import { formatForReader } from '@/lib/units/display'
import { formatMass, kg } from '@/lib/units/mass'
import type { LengthUnit } from '@/lib/units/length'
import type { Viewer } from '../auth/viewer'
import { listOwnClasses } from '../data/classes'
import { listClassExercises, type ExerciseRecord } from '../data/exercises'
import { listPassUse } from '../data/pass-use'
import { findProgram } from '../data/program'
import { listStudentSkills, type SkillRecord } from '../data/skills'
import { listAttempts } from '../data/test-attempts'
import { ownEye, type EyeView } from './eye-view'
import { progressGoals } from './progress-goals'

export type MapCell = {
  readonly id: string
  readonly exercise: Pick<ExerciseRecord, 'process' | 'position' | 'progression'>
  readonly href: string
  /** 'lap, 0.045 in E71T-11' */
  readonly label: string
  readonly title: string
  readonly standing: Standing
  readonly step: HeatStep
  /** Under the figure: 'nearly there', 'not enough yet', 'not started'. */
  readonly word: string
}
export type Total = { readonly key: string; readonly term: string; readonly value: string; readonly note: string | null }
export type ExerciseGoals = { readonly id: string; readonly title: string; readonly href: string; readonly standing: Standing; readonly goals: readonly string[] }

export type ProgressMap = {
  readonly map: readonly (SkillMapBlock<MapCell> & { readonly process: Process })[]
  readonly totals: readonly Total[]
  /** Exercises practised, the latest first, each with what to aim for. */
  readonly goals: readonly ExerciseGoals[]
  /** Exercises not begun, and what they wait for. */
  readonly next: readonly string[]
  readonly eye: EyeView
}

const MOST_GOALS = 4
const MOST_NEXT = 4

type Entry = { readonly exercise: ExerciseRecord; readonly opensAfterId: string | null }

/** The viewer's own progress over all exercises; null while they are in no class and never were. */
export async function progressMap(viewer: Viewer, asOf: Date): Promise<ProgressMap | null> {
  const { locale, units, personId } = viewer
  const [classes, skills, program, attempts, eye, use] = await Promise.all([
    listOwnClasses(viewer), listStudentSkills(viewer, personId, asOf), findProgram(viewer), listAttempts(viewer, personId), ownEye(viewer), listPassUse(viewer, personId),
  ])
  if (classes.length === 0) return null
  const entries: Entry[] = (await Promise.all(classes.map((each) => listClassExercises(viewer, each.id)))).flat()
  const byExercise = new Map(skills.map((skill) => [skill.exerciseId, skill]))
  const cells = entries.map(({ exercise }) => cellOf(exercise, byExercise.get(exercise.id), program.minimumCoupons, viewer))
  const practised = [...new Map(cells.map((cell) => [cell.id, cell])).values()]
    .flatMap((cell) => {
      const skill = byExercise.get(cell.id)
      return skill && skill.couponCount > 0 ? [{ cell, skill }] : []
    })
    .sort((a, b) => (b.skill.lastCouponAt?.getTime() ?? 0) - (a.skill.lastCouponAt?.getTime() ?? 0))
  const goals: ExerciseGoals[] = []
  for (const { cell, skill } of practised.slice(0, MOST_GOALS)) {
    goals.push({ id: cell.id, title: cell.title, href: cell.href, standing: cell.standing, goals: await progressGoals(viewer, cell.id, skill, attempts, asOf) })
  }
  return {
    map: skillMap(cells),
    totals: totalsOf(skills, wireUsed(use), locale, units),
    goals,
    next: nextOf(entries, byExercise, locale),
    eye,
  }
}

function cellOf(exercise: ExerciseRecord, skill: SkillRecord | undefined, minimumCoupons: number, { locale, units }: Viewer): MapCell {
  const where = standing(skill, minimumCoupons, locale)
  const wire = [exercise.electrodeDiameterMm === null ? null : formatForReader(exercise.electrodeDiameterMm, units), exercise.electrodeClass].filter(Boolean).join(' ')
  return {
    id: exercise.id, exercise, href: `/learn/progress/${exercise.id}`, title: exercise.title, standing: where, step: heatStep(where.probability),
    label: `${say(learn, locale, exercise.joint)}, ${wire}`, word: wordOf(skill, locale),
  }
}

function wordOf(skill: SkillRecord | undefined, locale: Locale): string {
  if (!skill || skill.couponCount === 0) return say(myProgress, locale, 'notStarted')
  return skill.advice ? say(myProgress, locale, `word-${skill.advice}`) : say(myProgress, locale, 'notEnough')
}

/** Coupons, time and wire; what was never written down is said to be so and is not 0. */
export function totalsOf(skills: readonly Pick<SkillRecord, 'couponCount' | 'arcSeconds'>[], wire: WireUsed, locale: Locale, units: LengthUnit): readonly Total[] {
  const told = (key: keyof typeof myProgress.en, values: Record<string, string | number> = {}): string => say(myProgress, locale, key, values)
  const coupons = skills.reduce((sum, skill) => sum + skill.couponCount, 0)
  const arc = skills.reduce((sum, skill) => sum + skill.arcSeconds, 0)
  return [
    { key: 'coupons', term: told('coupons'), value: String(coupons), note: null },
    { key: 'arc', term: told('underArc'), value: arc > 0 ? formatTotalTime(seconds(arc)) : told('noArcTime'), note: null },
    {
      key: 'wire', term: told('wireUsed'), value: wire.kg ? massRange(wire.kg, locale, units) : told('wireNone'),
      note: wire.kg ? (wire.counted === wire.coupons ? told('wireAll') : told('wireSome', { counted: wire.counted, coupons: wire.coupons })) : null,
    },
  ]
}

function massRange({ low, high }: NonNullable<WireUsed['kg']>, locale: Locale, units: LengthUnit): string {
  const as = units === 'in' ? { unit: 'lb', digits: 1 } as const : { unit: 'kg', digits: 2 } as const
  const [least, most] = [formatMass(kg(low), as), formatMass(kg(high), as)]
  return least === most ? least : say(myProgress, locale, 'wireRange', { low: least, high: most })
}

function nextOf(entries: readonly Entry[], skills: ReadonlyMap<string, SkillRecord>, locale: Locale): readonly string[] {
  const titles = new Map(entries.map(({ exercise }) => [exercise.id, shortTitle(exercise)]))
  const unbegun = entries.filter(({ exercise }) => !skills.get(exercise.id)?.couponCount)
  if (unbegun.length === 0) return [say(myProgress, locale, 'nextNone')]
  return unbegun.slice(0, MOST_NEXT).map(({ exercise, opensAfterId }) => {
    const first = opensAfterId !== null && !isBehind(skills.get(opensAfterId)) ? titles.get(opensAfterId) : undefined
    return first === undefined ? say(myProgress, locale, 'nextOpen', { title: exercise.title }) : say(myProgress, locale, 'nextAfter', { title: exercise.title, first })
  })
}

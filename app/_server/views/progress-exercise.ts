import 'server-only'
import { myProgress } from '@/lib/language/my-progress'
import { say } from '@/lib/language/say'
import { explainConsistency } from '@/lib/reports/explain-consistency'
import { marginsByRule, type RuleMargins } from '@/lib/reports/margins-over-time'
import { ruleName } from '@/lib/reports/rule-names'
import { marginText } from '@/lib/reports/scorecard-view'
import { standing, type Standing } from '@/lib/reports/standing'
import { widthConsistency } from '@/lib/reports/width-consistency'
import { wireUsed } from '@/lib/reports/wire-used'
import type { Viewer } from '../auth/viewer'
import { listOwnClasses } from '../data/classes'
import { criteriaSet } from '../data/criteria'
import { findExercise, listClassExercises, type ExerciseRecord } from '../data/exercises'
import { listPassUse } from '../data/pass-use'
import { findProgram } from '../data/program'
import { listStudentSkills } from '../data/skills'
import { listAttempts } from '../data/test-attempts'
import { progressGoals } from './progress-goals'
import { totalsOf, type Total } from './progress-map'
import { readinessView, type ReadinessView } from './readiness-view'
import { storyOf, type Story } from './story'

export type MarginRow = RuleMargins & { readonly name: string; readonly outText: string; readonly nowText: string; readonly label: string }

export type ProgressExercise = {
  readonly exercise: ExerciseRecord
  readonly standing: Standing
  /** The exercise's page in one of the viewer's classes; null when it is in none of them now. */
  readonly href: string | null
  readonly goals: readonly string[]
  readonly totals: readonly Total[]
  readonly readiness: ReadinessView | null
  readonly story: Story
  readonly margins: { readonly rows: readonly MarginRow[]; readonly first: number; readonly last: number }
  readonly consistency: readonly string[]
}

const MOST_COUPONS = 60

/** The viewer's own progress in one exercise; null when it is not theirs to see. */
export async function progressExercise(viewer: Viewer, exerciseId: string, asOf: Date): Promise<ProgressExercise | null> {
  const exercise = await findExercise(viewer, exerciseId)
  if (!exercise) return null
  const { locale, units, personId } = viewer
  const key = { studentId: personId, exerciseId }
  const [skills, attempts, program, readiness, story, use, classes, criteria] = await Promise.all([
    listStudentSkills(viewer, personId, asOf), listAttempts(viewer, personId), findProgram(viewer), readinessView(viewer, key, asOf), storyOf(viewer, key, MOST_COUPONS),
    listPassUse(viewer, personId), listOwnClasses(viewer), criteriaSet(viewer.programId, exercise.criteria.id, exercise.criteria.version),
  ])
  const skill = skills.find((each) => each.exerciseId === exerciseId)
  const judged = story.coupons.flatMap(({ number, counts }) => (counts ? [{ number, findings: counts.scorecard.findings }] : []))
  const [first, last] = [judged[0]?.number ?? 1, judged.at(-1)?.number ?? 1]
  const rows = marginsByRule(judged).map((margins): MarginRow => {
    const name = ruleName(margins.rule, locale, criteria)
    const outText = margins.out === 0 ? say(myProgress, locale, 'marginNeverOut', { of: margins.measured }) : say(myProgress, locale, 'marginOut', { out: margins.out, of: margins.measured })
    const nowText = say(myProgress, locale, 'marginLast', { margin: marginText(margins.last, { locale, units }) ?? '–' })
    return { ...margins, name, outText, nowText, label: say(myProgress, locale, 'marginLabel', { rule: name, first, last, out: outText, now: nowText }) }
  })
  const home = (await Promise.all(classes.map(async ({ id }) => ({ id, has: (await listClassExercises(viewer, id)).some((each) => each.exercise.id === exerciseId) })))).find(({ has }) => has)
  return {
    exercise,
    standing: standing(skill, program.minimumCoupons, locale),
    href: home ? `/learn/${home.id}/${exerciseId}` : null,
    goals: await progressGoals(viewer, exerciseId, skill, attempts, asOf),
    totals: totalsOf(skill ? [skill] : [], wireUsed(use.filter((each) => each.exerciseId === exerciseId)), locale, units),
    readiness, story, margins: { rows, first, last },
    consistency: explainConsistency(widthConsistency(story.coupons.flatMap(({ number, counts }) => (counts ? [{ number, widthsMm: counts.readings.inspection.stations.flatMap(({ widthMm }) => widthMm ?? []) }] : []))), locale),
  }
}

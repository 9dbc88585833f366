import 'server-only'
import { typedExercise, type TypedExercise } from '@/lib/course/typed-exercise'
import { versionChanges } from '@/lib/course/version-changes'
import { momentText } from '@/lib/reports/dates'
import type { Viewer } from '../auth/viewer'
import { findEditable, listCriteriaChoices, listVersions } from '../data/exercise-versions'
import { findProgram } from '../data/program'
import { setupWarnings, type SetupWarning } from './course-warnings'

type Key = { readonly classId: string; readonly exerciseId: string }

export type ExerciseEditor = {
  readonly title: string
  readonly version: number
  readonly otherClasses: number
  readonly units: 'in' | 'mm'
  readonly values: TypedExercise
  readonly warnings: readonly SetupWarning[]
  readonly judgedBy: { readonly id: string; readonly version: number }
  readonly criteria: readonly { readonly value: string; readonly label: string }[]
}

/** An exercise as its boxes hold it, for those who keep the class; null for anyone else and in an archived class. */
export async function exerciseEditor(viewer: Viewer, key: Key): Promise<ExerciseEditor | null> {
  const found = await findEditable(viewer, key)
  if (!found) return null
  const { exercise, otherClasses } = found
  const criteria = await listCriteriaChoices(viewer, exercise.criteria)
  return {
    title: exercise.title, version: exercise.version, otherClasses, units: viewer.units, values: typedExercise(exercise, viewer.units),
    warnings: setupWarnings(exercise, viewer), judgedBy: exercise.criteria,
    criteria: criteria.map(({ id, version, title, retired }) => ({ value: `${id}@${version}`, label: `${title} (version ${version}${retired ? ', retired' : ''})` })),
  }
}

export type ExerciseHistory = { readonly title: string; readonly versions: readonly { readonly version: number; readonly facts: string; readonly changes: readonly string[] | null }[] }

/** Every version of an exercise, newest first, with who made it when, how many coupons it judged, and what changed. */
export async function exerciseHistory(viewer: Viewer, key: Key): Promise<ExerciseHistory | null> {
  const [versions, { timeZone }] = await Promise.all([listVersions(viewer, key), findProgram(viewer)])
  const newest = versions[0]
  if (!newest) return null
  return {
    title: newest.exercise.title,
    versions: versions.map(({ exercise, madeAt, by, coupons }, index) => {
      const before = versions[index + 1]
      return {
        version: exercise.version,
        facts: [momentText(madeAt, 'en', timeZone), by, `${coupons} ${coupons === 1 ? 'coupon' : 'coupons'}`].filter(Boolean).join(', '),
        changes: before ? versionChanges(before.exercise, exercise, viewer.units) : null,
      }
    }),
  }
}

import 'server-only'
import type { Viewer } from '../auth/viewer'
import { findStaffClass } from '../data/classes'
import { listClassExercises } from '../data/exercises'

export type ClassPaper = { readonly classId: string; readonly className: string; readonly exercises: readonly { readonly id: string; readonly title: string }[] }

/** What can be printed for a class, for those who keep it; null for anyone else. */
export async function classPaper(viewer: Viewer, classId: string): Promise<ClassPaper | null> {
  const kept = await findStaffClass(viewer, classId)
  if (!kept) return null
  const exercises = await listClassExercises(viewer, classId)
  return { classId, className: kept.name, exercises: exercises.map(({ exercise: { id, title } }) => ({ id, title })) }
}

import 'server-only'
import { LIBRARY } from '@/lib/course/library'
import type { Viewer } from '../auth/viewer'
import { findStaffClass } from '../data/classes'
import { listClassesToCopy, listProgramExercises } from '../data/course'
import { listClassExercises } from '../data/exercises'

type Choice = { readonly value: string; readonly label: string }
export type ClassCourse = {
  readonly classId: string
  readonly className: string
  readonly archived: boolean
  readonly list: readonly { readonly exerciseId: string; readonly title: string; readonly opensAfterId: string | null }[]
  /** Where more can come from: the program's exercises that are not on the list, the library, and other classes' lists. */
  readonly program: readonly Choice[]
  readonly library: readonly Choice[]
  readonly classes: readonly Choice[]
}

/** The list of exercises of a class for those who keep it; null for anyone else. */
export async function classCourse(viewer: Viewer, classId: string): Promise<ClassCourse | null> {
  const kept = await findStaffClass(viewer, classId)
  if (!kept) return null
  const [list, program, classes] = await Promise.all([listClassExercises(viewer, classId), listProgramExercises(viewer), listClassesToCopy(viewer)])
  const there = new Set(list.map(({ exercise }) => exercise.id))
  return {
    classId, className: kept.name, archived: kept.archived,
    list: list.map(({ exercise, opensAfterId }) => ({ exerciseId: exercise.id, title: exercise.title, opensAfterId })),
    program: program.filter((each) => !there.has(each.id)).map((each) => ({ value: each.id, label: `${each.process}: ${each.title}` })),
    library: LIBRARY.map(({ key, facts }) => ({ value: key, label: `${facts.process}: ${facts.title}` })),
    classes: classes.filter((each) => each.id !== classId).map((each) => ({ value: each.id, label: `${each.name}, ${each.term}` })),
  }
}

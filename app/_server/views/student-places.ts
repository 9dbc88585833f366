import 'server-only'
import { CAUTIONS_VERSION } from '@/lib/safety/cautions'
import { hasRole, type Viewer } from '../auth/viewer'
import { listClassStudents, listStudentClasses } from '../data/classes'
import { listClassExercises } from '../data/exercises'
import { listUnsignedCautions } from '../data/safety'

/** One class of a student. `cautions` is null where the viewer neither teaches nor coordinates it, or the student has left it. */
export type StudentPlace = {
  readonly classId: string
  readonly name: string
  readonly term: string
  readonly active: boolean
  readonly booth: number | null
  readonly cautions: { readonly signed: number; readonly of: number; readonly unsigned: readonly string[] } | null
}

/** The classes of a student as far as staff see them, each with the booth and what cautions are signed in its term. */
export async function studentPlaces(viewer: Viewer, studentId: string): Promise<StudentPlace[]> {
  const classes = await listStudentClasses(viewer, studentId)
  return Promise.all(classes.map(async ({ id, name, term, instructors }) => {
    const [students, exercises, open] = await Promise.all([listClassStudents(viewer, id), listClassExercises(viewer, id), listUnsignedCautions(viewer, id, CAUTIONS_VERSION)])
    const place = students.find((student) => student.id === studentId)
    const unsigned = open.filter((each) => each.students.some((student) => student.id === studentId)).map(({ title }) => title)
    const known = place !== undefined && (hasRole(viewer, 'coordinator') || instructors.some((instructor) => instructor.id === viewer.personId))
    return {
      classId: id, name, term: term.name, active: place !== undefined, booth: place?.booth ?? null,
      cautions: known ? { signed: exercises.length - unsigned.length, of: exercises.length, unsigned } : null,
    }
  }))
}

import type { CourseActions, ExerciseActions } from '@/app/_components/course/course-actions'
import { addLibraryExercise, addToList, checkExercise, chooseOpensAfter, copyClassList, moveInList, removeFromList, saveExercise } from './actions'

/** What the list of a class asks for, in the instructor's room and in the coordinator's. */
export const COURSE_ACTIONS: CourseActions = { add: addToList, addFromLibrary: addLibraryExercise, copy: copyClassList, move: moveInList, chooseOpensAfter, remove: removeFromList }

/** What the editor of an exercise asks for, in both rooms. */
export const EXERCISE_ACTIONS: ExerciseActions = { check: checkExercise, save: saveExercise }

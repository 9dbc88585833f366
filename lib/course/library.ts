import { fcawGLibrary } from './library-fcaw-g'
import { fcawSLibrary } from './library-fcaw-s'
import { gmawLibrary } from './library-gmaw'
import { smawLibrary } from './library-smaw'
import type { LibraryExercise } from './library-exercise'

/** Ready exercises by process, easiest first within each. Settings: `LIBRARY_SOURCE`. */
export const LIBRARY: readonly LibraryExercise[] = [...smawLibrary, ...fcawSLibrary, ...fcawGLibrary, ...gmawLibrary]

/** The exercise of a key; undefined for a key the library does not have. */
export const fromLibrary = (key: string): LibraryExercise | undefined => LIBRARY.find((each) => each.key === key)

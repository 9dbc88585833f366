import { PhotoProblem } from './photo-problem'

/** Nothing smaller is found on a photo, nothing larger lies in a booth. */
const LEAST_MM = 0.1
const MOST_MM = 10_000

/** @throws PhotoProblem unless the size is from 0.1 mm to 10 m */
export function requireKnownSize(sizeMm: number, name: string): void {
  if (!(Number.isFinite(sizeMm) && sizeMm >= LEAST_MM && sizeMm <= MOST_MM)) {
    throw new PhotoProblem('size-not-possible', `${name} cannot be ${String(sizeMm)} mm: enter its real size, from ${LEAST_MM} mm to ${MOST_MM} mm.`)
  }
}

/** @throws PhotoProblem unless the standard deviation is 0 or above, and finite */
export function requireErrorSize(sd: number, name: string): void {
  if (!(Number.isFinite(sd) && sd >= 0)) throw new PhotoProblem('picking-error-not-possible', `${name} cannot be ${String(sd)}: give a number of 0 or more.`)
}

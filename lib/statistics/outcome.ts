import { requireList } from './preconditions'

/** Whether a thing happened: `true` or 1, `false` or 0. Any other number is refused. */
export type Outcome = boolean | number

/** Outcomes as ones and zeros. Throws RangeError at the first entry that is neither. */
export function asOnesAndZeros(outcomes: readonly Outcome[], name: string): (0 | 1)[] {
  requireList(outcomes, name)
  return outcomes.map((outcome, i) => {
    if (outcome === true || outcome === 1) return 1
    if (outcome === false || outcome === 0) return 0
    throw new RangeError(`${name} must be true or false (1 or 0); entry ${i + 1} is ${String(outcome)}. Leave out what was not judged.`)
  })
}

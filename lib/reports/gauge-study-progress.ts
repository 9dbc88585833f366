import type { StudyPlan, Turn } from './gauge-study-order'

/** A reader and what they have read: an instructor of the class, or one who was when they began. `reads`: still teaches it and can sign in. */
export type StudyReader = { readonly id: string; readonly name: string; readonly reads: boolean; readonly done: readonly Turn[] }

/** How many readings a study asks of each reader. */
export const readingsEach = ({ rounds, couponIds }: StudyPlan): number => rounds * couponIds.length

/** Readings a study cannot do without: fewer readers or rounds show no difference between them. */
export const LEAST_READERS = 2

/** Whether everyone who reads has read everything, and there are at least two of them. */
export function isComplete(plan: StudyPlan, readers: readonly StudyReader[]): boolean {
  const finished = readers.filter(({ done }) => done.length >= readingsEach(plan))
  return finished.length >= LEAST_READERS && readers.every((reader) => !reader.reads || finished.includes(reader))
}

/**
 * What closing an open study now would come to: everyone has read everything; two have, and whoever has not is left out; or fewer have,
 * and it is given up.
 */
export type Closing = 'complete' | 'early' | 'given-up'
export const CLOSINGS = ['complete', 'early', 'given-up'] as const satisfies readonly Closing[]

export function closingOf(plan: StudyPlan, readers: readonly StudyReader[]): Closing {
  if (isComplete(plan, readers)) return 'complete'
  return readers.filter(({ done }) => done.length >= readingsEach(plan)).length >= LEAST_READERS ? 'early' : 'given-up'
}

/** What an open study still waits for, a sentence each. Counts only: widths stay covered until it is closed. */
export function stillMissing(plan: StudyPlan, readers: readonly StudyReader[]): string[] {
  const all = readingsEach(plan)
  const reading = readers.filter(({ reads }) => reads)
  const whole = readers.filter(({ done }) => done.length >= all).length
  const sentences = reading.filter(({ done }) => done.length < all).map(({ name, done }) =>
    done.length === 0 ? `${name} has not begun: ${all} readings.` : `${name} still reads: ${done.length} of ${all} readings are in.`)
  for (const { name, done } of readers.filter((reader) => !reader.reads && reader.done.length < all)) {
    sentences.push(`${name} reads here no more and left ${done.length} of ${all} readings. Nobody waits for the rest.`)
  }
  if (reading.length + readers.filter((reader) => !reader.reads && reader.done.length >= all).length < LEAST_READERS) {
    sentences.push('A study needs two readers. Those who read are the instructors of the class: the coordinator adds one on the people page.')
  } else if (whole >= LEAST_READERS && reading.every(({ done }) => done.length >= all)) {
    sentences.push('Everyone has read everything. Close the study to see what came of it.')
  }
  return sentences
}

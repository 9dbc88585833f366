/** What the order of a queue reads. */
export type Waiting = { readonly booth: number | null; readonly since: Date }

/** Longest waiting first, or booth by booth as one walks: on from the chosen booth, then round again from the lowest. */
export type QueueOrder = { readonly by: 'oldest' } | { readonly by: 'booth'; readonly from: number }

/**
 * What waits, in the order an instructor takes it. Within a booth the longest waiting comes first; what has no booth comes last.
 *
 * @throws RangeError when the booth to start from is not a whole number
 */
export function queueOrder<T extends Waiting>(rows: readonly T[], order: QueueOrder): T[] {
  if (order.by === 'oldest') return [...rows].sort(older)
  const { from } = order
  if (!Number.isInteger(from)) throw new RangeError(`The booth to start from must be a whole number, not ${from}.`)
  const round = ({ booth }: Waiting): number => (booth === null ? 2 : booth >= from ? 0 : 1)
  return [...rows].sort((a, b) => round(a) - round(b) || (a.booth ?? 0) - (b.booth ?? 0) || older(a, b))
}

const older = (a: Waiting, b: Waiting): number => a.since.getTime() - b.since.getTime()

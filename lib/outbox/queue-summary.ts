import type { OutboxEntry } from './outbox-entry'

export type QueueSummary = {
  /** The person's own that send themselves. */
  readonly waiting: readonly OutboxEntry[]
  /** The person's own that wait for a decision: refused, or back in their form. */
  readonly kept: readonly OutboxEntry[]
  /** Other people's on the same device: whose and how many, in the order they came. Nothing of what is in them. */
  readonly others: readonly { readonly signInName: string; readonly count: number }[]
}

/** What one person may know of a device's queue. */
export function summarizeQueue(entries: readonly OutboxEntry[], personId: string): QueueSummary {
  const own = entries.filter((entry) => entry.personId === personId)
  const counts = new Map<string, number>()
  for (const entry of entries) if (entry.personId !== personId) counts.set(entry.signInName, (counts.get(entry.signInName) ?? 0) + 1)
  return {
    waiting: own.filter(({ state }) => state === 'waiting'),
    kept: own.filter(({ state }) => state !== 'waiting'),
    others: [...counts].map(([signInName, count]) => ({ signInName, count })),
  }
}

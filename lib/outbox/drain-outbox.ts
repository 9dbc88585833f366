import type { OutboxEntry, OutboxPhoto, OutboxStore } from './outbox-entry'
import type { Held, SendOutcome } from './send-outcome'

/** A coupon on which the server itself fails this often stops holding up the ones behind it. */
export const MOST_FAILURES = 6

/** What the queue needs from the world around it. */
export type OutboxPorts = {
  readonly store: OutboxStore
  sendCoupon(entry: OutboxEntry): Promise<SendOutcome>
  sendPhoto(entry: OutboxEntry, photo: OutboxPhoto): Promise<SendOutcome>
  /** Told after each coupon the server has, before its photos. */
  arrived?(entry: OutboxEntry, number: number | null): void
}

export type DrainEnd = 'empty' | 'unreachable' | 'failed' | Held

/**
 * Sends what one person has waiting on this device, oldest first, one at a time: a coupon, then its photos, then the next. A refused one
 * is kept and passed by; anything that stops them all ends the round with the queue as it was. Entries of other people are never touched.
 *
 * Run it under a lock: two rounds at once would do no harm on the server, which takes each id once, but send everything twice.
 */
export async function drainOutbox(ports: OutboxPorts, personId: string): Promise<DrainEnd> {
  for (;;) {
    const next = (await ports.store.list()).find((entry) => entry.personId === personId && entry.state === 'waiting')
    if (!next) return 'empty'
    const end = await sendEntry(ports, next)
    if (end !== null) return end
  }
}

/** Sends one coupon and its photos. Null: go on with the next one. */
async function sendEntry(ports: OutboxPorts, entry: OutboxEntry): Promise<Exclude<DrainEnd, 'empty'> | null> {
  const { store } = ports
  await store.update(entry.id, (kept) => ({ ...kept, attempts: kept.attempts + 1 }))
  if (entry.number === null) {
    const outcome = await ports.sendCoupon(entry)
    if (outcome.kind !== 'taken') return settle(ports, entry, outcome)
    await store.update(entry.id, (kept) => ({ ...kept, number: outcome.number ?? 0, state: 'waiting', refusal: null }))
    ports.arrived?.(entry, outcome.number)
  }
  for (const photo of entry.photos) {
    const outcome = await ports.sendPhoto(entry, photo)
    if (outcome.kind !== 'taken') return settle(ports, entry, outcome)
    await store.update(entry.id, (kept) => ({ ...kept, photos: kept.photos.filter(({ id }) => id !== photo.id) }))
  }
  await store.remove(entry.id)
  return null
}

async function settle({ store }: OutboxPorts, entry: OutboxEntry, outcome: Exclude<SendOutcome, { kind: 'taken' }>): Promise<Exclude<DrainEnd, 'empty'> | null> {
  switch (outcome.kind) {
    case 'held': return outcome.why
    case 'unreachable': return 'unreachable'
    case 'failed': {
      const isLast = entry.failures + 1 >= MOST_FAILURES
      await store.update(entry.id, (kept) => ({
        ...kept, failures: kept.failures + 1,
        ...(isLast && { state: 'refused' as const, refusal: { code: 'FAILED', message: '', fields: {} } }),
      }))
      return isLast ? null : 'failed'
    }
    case 'refused':
      await store.update(entry.id, (kept) => ({ ...kept, state: 'refused', refusal: { code: outcome.code, message: outcome.message, fields: outcome.fields } }))
      return null
  }
}

import type { OutboxEntry, OutboxStore } from '@/lib/outbox/outbox-entry'

/** A device's storage in memory, with the same promises as the real one. */
export function memoryStore(start: readonly OutboxEntry[] = []): OutboxStore {
  let entries = [...start]
  return {
    list: () => Promise.resolve([...entries]),
    put: (entry) => {
      entries = entries.some(({ id }) => id === entry.id) ? entries.map((kept) => (kept.id === entry.id ? entry : kept)) : [...entries, entry]
      return Promise.resolve()
    },
    update: (id, change) => {
      entries = entries.map((kept) => (kept.id === id ? change(kept) : kept))
      return Promise.resolve()
    },
    remove: (id) => {
      entries = entries.filter((kept) => kept.id !== id)
      return Promise.resolve()
    },
  }
}

/** A queued coupon of ana's, or of whoever is given. */
export function entry(id: string, given: Partial<OutboxEntry> = {}): OutboxEntry {
  return {
    id, kind: 'coupon', schema: 1, personId: 'ana', programId: 'north', signInName: 'a.first', payload: { id }, photos: [],
    about: { exercise: '2F', href: '/learn/c/e/log', draftKey: 'draft', draft: {}, stations: 1, indications: 0 },
    createdAt: 0, attempts: 0, failures: 0, refusal: null, state: 'waiting', number: null, ...given,
  }
}

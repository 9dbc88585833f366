import type { OutboxEntry, OutboxStore } from './outbox-entry'

/** A queue that lasts as long as its page: for browsers that keep nothing. */
export function passingStore(start: readonly OutboxEntry[] = []): OutboxStore {
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

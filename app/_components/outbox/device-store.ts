import { openDB, type DBSchema, type IDBPDatabase } from 'idb'
import type { OutboxEntry, OutboxStore } from '@/lib/outbox/outbox-entry'

/** The entry as it lies on the device: `seq` is its place in the queue, given when it is first put. */
type Kept = OutboxEntry & { readonly seq?: number }
interface Schema extends DBSchema {
  outbox: { key: number; value: Kept; indexes: { id: string } }
}

/** A browser that has not opened its storage by then never will. */
const PATIENCE_MS = 4_000

let standing: Promise<IDBPDatabase<Schema>> | null = null
const close = (): void => { standing = null }

/** The open database; opened anew when the browser has closed it meanwhile (storage cleared, or short of memory). */
function open(): Promise<IDBPDatabase<Schema>> {
  standing ??= openDB<Schema>('toeline', 1, {
    upgrade(database) {
      database.createObjectStore('outbox', { keyPath: 'seq', autoIncrement: true }).createIndex('id', 'id', { unique: true })
    },
    terminated: close,
    blocking: (_current, _wanted, event) => {
      (event.target as IDBDatabase).close()
      close()
    },
  })
  standing.catch(close)
  return standing
}

const tooLate = (): Promise<never> => new Promise((_resolve, reject) => setTimeout(() => reject(new Error('The storage does not open.')), PATIENCE_MS))

/**
 * The device's own storage. Survives a closed tab and a restarted device. The worker reads the same database: public/sw.js.
 *
 * @throws what the browser throws where there is no such storage (some private windows), or when it does not open
 */
export async function deviceStore(): Promise<OutboxStore> {
  await Promise.race([open(), tooLate()])
  return {
    list: async () => (await open()).getAll('outbox'),
    async put(entry) {
      const work = (await open()).transaction('outbox', 'readwrite')
      const place = await work.store.index('id').getKey(entry.id)
      await Promise.all([work.store.put(place === undefined ? entry : { ...entry, seq: place }), work.done])
    },
    async update(id, change) {
      const work = (await open()).transaction('outbox', 'readwrite')
      const kept = await work.store.index('id').get(id)
      await Promise.all([kept && work.store.put({ ...change(kept), ...(kept.seq !== undefined && { seq: kept.seq }) }), work.done])
    },
    async remove(id) {
      const work = (await open()).transaction('outbox', 'readwrite')
      const key = await work.store.index('id').getKey(id)
      await Promise.all([key !== undefined && work.store.delete(key), work.done])
    },
  }
}

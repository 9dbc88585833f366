import { openDB, type DBSchema } from 'idb'
import type { OutboxEntry, OutboxStore } from '@/lib/outbox/outbox-entry'

/** The entry as it lies on the device: `seq` is its place in the queue, given when it is first put. */
type Kept = OutboxEntry & { readonly seq?: number }
interface Schema extends DBSchema {
  outbox: { key: number; value: Kept; indexes: { id: string } }
}

const open = () => openDB<Schema>('toeline', 1, {
  upgrade(database) {
    database.createObjectStore('outbox', { keyPath: 'seq', autoIncrement: true }).createIndex('id', 'id', { unique: true })
  },
})

/**
 * The device's own storage. Survives a closed tab and a restarted device. The worker reads the same database: public/sw.js.
 *
 * @throws what the browser throws where there is no such storage (some private windows)
 */
export async function deviceStore(): Promise<OutboxStore> {
  const database = await open()
  return {
    list: () => database.getAll('outbox'),
    async put(entry) {
      const work = database.transaction('outbox', 'readwrite')
      const standing = await work.store.index('id').getKey(entry.id)
      await Promise.all([work.store.put(standing === undefined ? entry : { ...entry, seq: standing }), work.done])
    },
    async update(id, change) {
      const work = database.transaction('outbox', 'readwrite')
      const standing = await work.store.index('id').get(id)
      await Promise.all([standing && work.store.put({ ...change(standing), ...(standing.seq !== undefined && { seq: standing.seq }) }), work.done])
    },
    async remove(id) {
      const work = database.transaction('outbox', 'readwrite')
      const key = await work.store.index('id').getKey(id)
      await Promise.all([key !== undefined && work.store.delete(key), work.done])
    },
  }
}

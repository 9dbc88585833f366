import 'server-only'
import { randomUUID } from 'node:crypto'
import { mkdir, open, rename, rm, writeFile } from 'node:fs/promises'
import path from 'node:path'
import { Readable } from 'node:stream'
import { env } from './env'
import type { PhotoStore } from './photo-store'
import { StoreDown } from './store-down'

const placeOf = (sha256: string): string => path.join(/* turbopackIgnore: true */ env().TOELINE_DATA, 'photos', sha256.slice(0, 2), `${sha256}.webp`)
const codeOf = (error: unknown): string => (error as NodeJS.ErrnoException).code ?? String(error)

/** Photos in a folder of this server, outside the web root. */
export const diskStore = (): PhotoStore => ({
  async put(sha256, bytes) {
    const place = placeOf(sha256)
    // Written beside and moved into place, so that a reader never meets half a file; two writers of one picture each write their own.
    const partial = `${place}.${randomUUID()}`
    try {
      await mkdir(path.dirname(place), { recursive: true })
      await writeFile(partial, bytes)
      await rename(partial, place)
    } catch (error) {
      await rm(partial, { force: true }).catch(() => undefined)
      throw new StoreDown(`The folder for photos cannot be written: ${codeOf(error)}.`, { cause: error })
    }
  },
  async get(sha256) {
    try {
      const file = await open(placeOf(sha256))
      const { size } = await file.stat()
      return { body: Readable.toWeb(file.createReadStream()) as ReadableStream<Uint8Array>, byteSize: size }
    } catch (error) {
      if (codeOf(error) === 'ENOENT') return null
      throw new StoreDown(`The folder for photos cannot be read: ${codeOf(error)}.`, { cause: error })
    }
  },
})

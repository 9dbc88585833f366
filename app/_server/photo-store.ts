import 'server-only'
import { photoStoreSettings } from './env'
import { diskStore } from './photo-store-disk'
import { s3Store } from './photo-store-s3'

/** The bytes of a kept photo on their way out. */
export type KeptPhoto = { readonly body: ReadableStream<Uint8Array>; readonly byteSize: number | null }

/** Where photos are kept, each under the hash of its bytes. Who may ask is decided before. */
export type PhotoStore = {
  /** Keeps all of a photo or nothing. @throws StoreDown when the store does not answer or refuses */
  readonly put: (sha256: string, bytes: Buffer) => Promise<void>
  /** null when there is no such photo. @throws StoreDown when the store does not answer or refuses */
  readonly get: (sha256: string) => Promise<KeptPhoto | null>
}

let chosen: PhotoStore | null = null

/** The store the environment names: an S3-compatible one, or a folder of this server. */
export function photoStore(): PhotoStore {
  if (chosen) return chosen
  const settings = photoStoreSettings()
  chosen = settings ? s3Store(settings) : diskStore()
  return chosen
}

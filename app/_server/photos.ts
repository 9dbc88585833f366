import 'server-only'
import { createHash } from 'node:crypto'
import { fileTypeFromBuffer } from 'file-type'
import sharp from 'sharp'
import { refusals } from '@/lib/language/refusals'
import { say, type Locale } from '@/lib/language/say'
import { MOST_PHOTO_BYTES, MOST_PHOTO_MB, PHOTO_TYPES } from '@/lib/schemas/photo-limits'
import { log } from './log'
import { photoStore, type KeptPhoto } from './photo-store'
import { Refusal } from './refusal'
import { StoreDown } from './store-down'

/** 60 megapixels: above any phone, below a decompression bomb. */
const MOST_PIXELS = 60_000_000
const LONGEST_SIDE = 2048

// Decoders we never need are the ones with the worst record.
sharp.block({ operation: ['VipsForeignLoadHeif', 'VipsForeignLoadSvg'] })
sharp.concurrency(1)

export type StoredPhoto = { readonly sha256: string; readonly widthPx: number; readonly heightPx: number; readonly byteSize: number }

const told = (code: 'INVALID' | 'TOO_LARGE', locale: Locale, key: 'photoTooLarge' | 'photoKind' | 'photoDamaged'): Refusal => {
  const message = say(refusals, locale, key, { most: MOST_PHOTO_MB })
  return new Refusal(code, message, { photo: message })
}
export const photoTooLarge = (locale: Locale): Refusal => told('TOO_LARGE', locale, 'photoTooLarge')

/**
 * Checks a photo by its content, re-encodes it (which drops every metadata block), sizes it and keeps it under its hash.
 *
 * @throws Refusal saying what is wrong with the file, or that photos cannot be kept just now
 */
export async function keepPhoto(bytes: Buffer, locale: Locale): Promise<StoredPhoto> {
  if (bytes.length > MOST_PHOTO_BYTES) throw photoTooLarge(locale)
  const type = await fileTypeFromBuffer(bytes)
  if (!type || !PHOTO_TYPES.includes(type.mime)) throw told('INVALID', locale, 'photoKind')
  let encoded: { data: Buffer; info: { width: number; height: number } }
  try {
    encoded = await sharp(bytes, { limitInputPixels: MOST_PIXELS, failOn: 'error' })
      .autoOrient()
      .resize({ width: LONGEST_SIDE, height: LONGEST_SIDE, fit: 'inside', withoutEnlargement: true })
      .webp({ quality: 80 })
      .toBuffer({ resolveWithObject: true })
  } catch {
    throw told('INVALID', locale, 'photoDamaged')
  }
  const sha256 = createHash('sha256').update(encoded.data).digest('hex')
  await orDown(locale, () => photoStore().put(sha256, encoded.data))
  return { sha256, widthPx: encoded.info.width, heightPx: encoded.info.height, byteSize: encoded.data.length }
}

/** The bytes of a kept photo, as WebP; null when it is gone. The caller has checked who is asking. @throws Refusal when the store is down */
export const readPhoto = (sha256: string, locale: Locale = 'en'): Promise<KeptPhoto | null> => orDown(locale, () => photoStore().get(sha256))

/** People are told to try later; what happened is the operator's to read. */
async function orDown<T>(locale: Locale, work: () => Promise<T>): Promise<T> {
  try {
    return await work()
  } catch (error) {
    if (!(error instanceof StoreDown)) throw error
    log().error({ event: 'photo store down', error: error.message })
    throw new Refusal('UNAVAILABLE', say(refusals, locale, 'photoStoreDown'))
  }
}

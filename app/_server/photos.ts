import 'server-only'
import { createHash, randomUUID } from 'node:crypto'
import { mkdir, readFile, rename, writeFile } from 'node:fs/promises'
import path from 'node:path'
import { fileTypeFromBuffer } from 'file-type'
import sharp from 'sharp'
import { refusals } from '@/lib/language/refusals'
import { say, type Locale } from '@/lib/language/say'
import { MOST_PHOTO_BYTES, MOST_PHOTO_MB, PHOTO_TYPES } from '@/lib/schemas/photo-limits'
import { env } from './env'
import { Refusal } from './refusal'

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
const placeOf = (sha256: string): string => path.join(/* turbopackIgnore: true */ env().TOELINE_DATA, 'photos', sha256.slice(0, 2), `${sha256}.webp`)

/**
 * Checks a photo by its content, re-encodes it (which drops every metadata block), sizes it and keeps it under its hash.
 *
 * @throws Refusal saying what is wrong with the file
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
  const place = placeOf(sha256)
  await mkdir(path.dirname(place), { recursive: true })
  // Written beside and moved into place, so that a reader never meets half a file; two writers of one picture each write their own.
  const partial = `${place}.${randomUUID()}`
  await writeFile(partial, encoded.data)
  await rename(partial, place)
  return { sha256, widthPx: encoded.info.width, heightPx: encoded.info.height, byteSize: encoded.data.length }
}

/** The bytes of a kept photo, as WebP; null when the file is gone. The caller has checked who is asking. */
export async function readPhoto(sha256: string): Promise<Buffer | null> {
  try {
    return await readFile(placeOf(sha256))
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return null
    throw error
  }
}

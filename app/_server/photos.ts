import 'server-only'
import { createHash } from 'node:crypto'
import { mkdir, readFile, rename, writeFile } from 'node:fs/promises'
import path from 'node:path'
import { fileTypeFromBuffer } from 'file-type'
import sharp from 'sharp'
import { env } from './env'
import { Refusal } from './refusal'

/** A phone photograph is 3 to 12 MB; more is a mistake or an attack. */
export const MOST_PHOTO_BYTES = 15 * 1024 * 1024
/** 60 megapixels: above any phone, below a decompression bomb. */
const MOST_PIXELS = 60_000_000
const LONGEST_SIDE = 2048
const TAKEN = new Set(['image/jpeg', 'image/png', 'image/webp'])

// Decoders we never need are the ones with the worst record.
sharp.block({ operation: ['VipsForeignLoadHeif', 'VipsForeignLoadSvg'] })
sharp.concurrency(1)

export type StoredPhoto = { readonly sha256: string; readonly widthPx: number; readonly heightPx: number; readonly byteSize: number }

const refuse = (message: string): Refusal => new Refusal('INVALID', message, { photo: message })
const placeOf = (sha256: string): string => path.join(/* turbopackIgnore: true */ env().TOELINE_DATA, 'photos', sha256.slice(0, 2), `${sha256}.webp`)

/**
 * Checks a photo by its content, re-encodes it (which drops every metadata block), sizes it and keeps it under its hash.
 *
 * @throws Refusal saying what is wrong with the file
 */
export async function keepPhoto(bytes: Buffer): Promise<StoredPhoto> {
  if (bytes.length > MOST_PHOTO_BYTES) throw new Refusal('TOO_LARGE', 'This photo is over 15 MB. Take it again at a smaller size.', { photo: 'Over 15 MB.' })
  const type = await fileTypeFromBuffer(bytes)
  if (!type || !TAKEN.has(type.mime)) throw refuse('This file is not a JPEG, PNG or WebP picture. Choose a photo.')
  let encoded: { data: Buffer; info: { width: number; height: number } }
  try {
    encoded = await sharp(bytes, { limitInputPixels: MOST_PIXELS, failOn: 'error' })
      .autoOrient()
      .resize({ width: LONGEST_SIDE, height: LONGEST_SIDE, fit: 'inside', withoutEnlargement: true })
      .webp({ quality: 80 })
      .toBuffer({ resolveWithObject: true })
  } catch {
    throw refuse('This picture is damaged or far too large to open. Take it again.')
  }
  const sha256 = createHash('sha256').update(encoded.data).digest('hex')
  const place = placeOf(sha256)
  await mkdir(path.dirname(place), { recursive: true })
  // Written beside and moved into place, so that a reader never meets half a file.
  const partial = `${place}.${process.pid}.${Date.now()}`
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

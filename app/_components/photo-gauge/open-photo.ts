import type { Pixels } from '@/lib/measure/snap-mark'
import { photoPixels, smallPhoto, type DrawnPhoto } from './draw-photo'
import type { PhotoWork } from './photo-worker'

export type OpenPhoto = Pixels & { readonly url: string }

/** A worker that could not even be started, in contrast to one that could not read the photo. */
class NoWorker extends Error {}

function inWorker<Done>(work: PhotoWork): Promise<Done> {
  return new Promise((resolve, reject) => {
    if (typeof Worker === 'undefined' || typeof OffscreenCanvas === 'undefined') return reject(new NoWorker())
    const worker = new Worker(new URL('./photo-worker.ts', import.meta.url), { type: 'module' })
    const end = (then: () => void): void => { worker.terminate(); then() }
    worker.addEventListener('error', () => end(() => reject(new NoWorker())))
    worker.addEventListener('message', ({ data }: MessageEvent<{ readonly done: Done } | { readonly failed: string }>) =>
      end(() => ('done' in data ? resolve(data.done) : reject(new Error(data.failed)))))
    worker.postMessage(work)
  })
}

/** Beside the page where the browser can, else on it. */
async function beside<Done>(work: PhotoWork, here: (photo: Blob) => Promise<Done>): Promise<Done> {
  try {
    return await inWorker<Done>(work)
  } catch (problem) {
    if (problem instanceof NoWorker) return here(work.photo)
    throw problem
  }
}

/**
 * A photo made fit for a slow link: turned upright, at most 2048 pixels long, without the metadata that says where it was taken.
 *
 * @throws when the browser cannot read the picture
 */
export const shrunk = (photo: Blob): Promise<Blob> => beside({ kind: 'small', photo }, smallPhoto)

/** A photo with its pixels, to be measured; revoke its url when done. @throws when the browser cannot read the picture */
export async function opened(photo: Blob): Promise<OpenPhoto> {
  const { shown, ...pixels } = await beside<DrawnPhoto>({ kind: 'pixels', photo }, photoPixels)
  return { ...pixels, url: URL.createObjectURL(shown) }
}

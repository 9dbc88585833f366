import type { Pixels } from '@/lib/measure/snap-mark'

/** Longest side of a photo as it is kept and sent, as the server keeps it: enough for 8 pixels to the millimetre over 25 cm. */
const LONGEST_PX = 2048
const QUALITY = 0.85

export type OpenPhoto = Pixels & { readonly url: string }

/** The photo the right way up, no larger than is kept, on a canvas. @throws when the browser cannot read it */
async function drawn(photo: Blob): Promise<HTMLCanvasElement> {
  const bitmap = await createImageBitmap(photo, { imageOrientation: 'from-image' })
  try {
    const factor = Math.min(1, LONGEST_PX / Math.max(bitmap.width, bitmap.height))
    const canvas = document.createElement('canvas')
    canvas.width = Math.max(1, Math.round(bitmap.width * factor))
    canvas.height = Math.max(1, Math.round(bitmap.height * factor))
    const context = canvas.getContext('2d', { willReadFrequently: true })
    if (!context) throw new Error('This browser gives no canvas.')
    context.imageSmoothingQuality = 'high'
    context.drawImage(bitmap, 0, 0, canvas.width, canvas.height)
    return canvas
  } finally {
    bitmap.close()
  }
}

const encoded = (canvas: HTMLCanvasElement, type: string): Promise<Blob | null> => new Promise((done) => canvas.toBlob(done, type, QUALITY))

/**
 * A photo made fit for a slow link: turned upright, at most 2048 pixels long, without the metadata that says where it was taken.
 *
 * @throws when the browser cannot read the picture
 */
export async function shrunk(photo: Blob): Promise<Blob> {
  const canvas = await drawn(photo)
  // Browsers that write no WebP hand back PNG, which is larger than the photo was.
  const webp = await encoded(canvas, 'image/webp')
  const small = webp?.type === 'image/webp' ? webp : await encoded(canvas, 'image/jpeg')
  canvas.width = 0 // gives the memory back at once: phones have little
  if (!small) throw new Error('This browser could not write the picture.')
  return small
}

/** A photo with its pixels, to be measured; revoke its url when done. @throws when the browser cannot read the picture */
export async function opened(photo: Blob): Promise<OpenPhoto> {
  const canvas = await drawn(photo)
  const { data, width, height } = canvas.getContext('2d')!.getImageData(0, 0, canvas.width, canvas.height)
  const shown = await encoded(canvas, 'image/jpeg')
  if (!shown) throw new Error('This browser could not write the picture.')
  return { rgba: data, widthPx: width, heightPx: height, url: URL.createObjectURL(shown) }
}

/** Longest side of a photo as it is kept and sent, as the server keeps it: enough for 8 pixels to the millimetre over 25 cm. */
const LONGEST_PX = 2048
const QUALITY = 0.85

type Canvas = OffscreenCanvas | HTMLCanvasElement
export type Drawing = { readonly canvas: Canvas; readonly context: OffscreenCanvasRenderingContext2D | CanvasRenderingContext2D }

/** A photo's pixels, four bytes each, and a picture of them to be shown. */
export type DrawnPhoto = { readonly rgba: Uint8ClampedArray<ArrayBuffer>; readonly widthPx: number; readonly heightPx: number; readonly shown: Blob }

function blank(width: number, height: number): Drawing {
  const canvas: Canvas = typeof OffscreenCanvas === 'undefined' ? Object.assign(document.createElement('canvas'), { width, height }) : new OffscreenCanvas(width, height)
  const context = canvas.getContext('2d', { willReadFrequently: true }) as Drawing['context'] | null
  if (!context) throw new Error('This browser gives no canvas.')
  return { canvas, context }
}

/** The photo the right way up, no larger than is kept, on a canvas. @throws when the browser cannot read it */
async function drawn(photo: Blob): Promise<Drawing> {
  const bitmap = await createImageBitmap(photo, { imageOrientation: 'from-image' })
  try {
    const factor = Math.min(1, LONGEST_PX / Math.max(bitmap.width, bitmap.height))
    const drawing = blank(Math.max(1, Math.round(bitmap.width * factor)), Math.max(1, Math.round(bitmap.height * factor)))
    drawing.context.imageSmoothingQuality = 'high'
    drawing.context.drawImage(bitmap, 0, 0, drawing.canvas.width, drawing.canvas.height)
    return drawing
  } finally {
    bitmap.close()
  }
}

const encoded = ({ canvas }: Drawing, type: string): Promise<Blob | null> =>
  'convertToBlob' in canvas ? canvas.convertToBlob({ type, quality: QUALITY }) : new Promise((done) => canvas.toBlob(done, type, QUALITY))

/** The photo upright, small and without its metadata. @throws when the browser cannot read it */
export async function smallPhoto(photo: Blob): Promise<Blob> {
  const drawing = await drawn(photo)
  // Browsers that write no WebP hand back PNG, which is larger than the photo was.
  const webp = await encoded(drawing, 'image/webp')
  const small = webp?.type === 'image/webp' ? webp : await encoded(drawing, 'image/jpeg')
  drawing.canvas.width = 0 // gives the memory back at once: phones have little
  if (!small) throw new Error('This browser could not write the picture.')
  return small
}

/** The photo with its pixels. @throws when the browser cannot read it */
export async function photoPixels(photo: Blob): Promise<DrawnPhoto> {
  const drawing = await drawn(photo)
  const { data, width, height } = drawing.context.getImageData(0, 0, drawing.canvas.width, drawing.canvas.height)
  const shown = await encoded(drawing, 'image/jpeg')
  drawing.canvas.width = 0
  if (!shown) throw new Error('This browser could not write the picture.')
  return { rgba: data as Uint8ClampedArray<ArrayBuffer>, widthPx: width, heightPx: height, shown }
}

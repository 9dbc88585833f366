import { photoPixels, smallPhoto } from './draw-photo'

/** What the page asks of the worker. */
export type PhotoWork = { readonly kind: 'small' | 'pixels'; readonly photo: Blob }

// Runs beside the page: reading a photo of twelve megabytes takes seconds on an old phone, in which no tap would be answered.
self.addEventListener('message', (event: MessageEvent<PhotoWork>) => {
  const { kind, photo } = event.data
  const answer = async (): Promise<void> => {
    if (kind === 'small') self.postMessage({ done: await smallPhoto(photo) })
    else {
      const done = await photoPixels(photo)
      self.postMessage({ done }, { transfer: [done.rgba.buffer] })
    }
  }
  answer().catch((problem: unknown) => self.postMessage({ failed: String(problem) }))
})

import { photoGauge } from '@/lib/language/photo-gauge'
import { say, type Locale } from '@/lib/language/say'
import type { PhotoMarks } from '@/lib/measure/photo-marks'
import { postMarks } from '@/app/_components/outbox/post-entry'
import { keepOnDevice } from './marks-on-device'

/** Sends the marks of a photo the server has; this device forgets them once they are kept. Returns why they were not, or null. */
export async function sendMarks(photoId: string, marks: PhotoMarks, locale: Locale): Promise<string | null> {
  const sent = await postMarks(photoId, marks)
  if (sent.kind === 'taken') {
    keepOnDevice(photoId, null)
    return null
  }
  return sent.kind === 'refused' ? sent.message : say(photoGauge, locale, 'marksLater')
}

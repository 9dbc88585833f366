import { MOST_PHOTO_BYTES } from '@/lib/schemas/photo-limits'
import { offline } from '@/lib/language/offline'
import { say } from '@/lib/language/say'
import { uuid } from '@/lib/schemas/field'
import { currentViewer } from '@/app/_server/auth/viewer'
import { answer, answerRefusal } from '@/app/_server/answer'
import { addPhoto, checkPhotoPlace } from '@/app/_server/data/photos'
import { limitedBody } from '@/app/_server/limited-body'
import { keepPhoto, photoTooLarge } from '@/app/_server/photos'
import { newPasswordFirst, notFound, Refusal } from '@/app/_server/refusal'
import { isSameOrigin } from '@/app/_server/same-origin'

/**
 * Takes a photo of a coupon as the raw body: POST /api/photos?coupon=…&id=… with the picture's own bytes. Idempotent by id. A device's
 * queue adds &person=…, who took it: it is never taken under the name of someone else who is signed in by now.
 */
export async function POST(request: Request): Promise<Response> {
  if (!isSameOrigin(request)) return answerRefusal(notFound())
  const viewer = await currentViewer()
  if (!viewer) return answerRefusal(new Refusal('SIGNED_OUT', 'You are signed out. Sign in again; the photo is kept on this device.'))
  if (viewer.mustChangePassword) return answerRefusal(newPasswordFirst(viewer.locale))
  const asked = new URL(request.url).searchParams
  const person = asked.get('person')
  if (person !== null && person !== viewer.personId) return answerRefusal(new Refusal('OTHER_PERSON', say(offline, viewer.locale, 'otherPerson')))
  const couponId = uuid.safeParse(asked.get('coupon'))
  const id = uuid.safeParse(asked.get('id'))
  if (!couponId.success || !id.success) return answerRefusal(notFound(viewer.locale))
  try {
    await checkPhotoPlace(viewer, couponId.data, id.data)
    const bytes = await limitedBody(request, MOST_PHOTO_BYTES)
    if (!bytes) throw photoTooLarge(viewer.locale)
    const photo = await keepPhoto(bytes, viewer.locale)
    await addPhoto(viewer, { id: id.data, couponId: couponId.data, photo })
    return answer({ ok: true, value: { id: id.data } })
  } catch (refused) {
    if (refused instanceof Refusal) return answerRefusal(refused)
    throw refused
  }
}

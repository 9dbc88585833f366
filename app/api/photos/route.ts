import { uuid } from '@/lib/schemas/field'
import { currentViewer } from '@/app/_server/auth/viewer'
import { answer, answerRefusal } from '@/app/_server/answer'
import { addPhoto, checkPhotoPlace } from '@/app/_server/data/photos'
import { keepPhoto, MOST_PHOTO_BYTES } from '@/app/_server/photos'
import { notFound, Refusal } from '@/app/_server/refusal'
import { isSameOrigin } from '@/app/_server/same-origin'

const tooLarge = (): Refusal => new Refusal('TOO_LARGE', 'This photo is over 15 MB. Take it again at a smaller size.', { photo: 'Over 15 MB.' })

/** The body, read no further than the limit whatever its header promised. */
async function readLimited(request: Request): Promise<Buffer> {
  if (Number(request.headers.get('content-length') ?? 0) > MOST_PHOTO_BYTES) throw tooLarge()
  const chunks: Uint8Array[] = []
  let size = 0
  const reader = request.body?.getReader()
  while (reader) {
    const { done, value } = await reader.read()
    if (done) break
    size += value.length
    if (size > MOST_PHOTO_BYTES) {
      await reader.cancel()
      throw tooLarge()
    }
    chunks.push(value)
  }
  return Buffer.concat(chunks)
}

/** Takes a photo of a coupon as the raw body: POST /api/photos?coupon=…&id=… with the picture's own bytes. Idempotent by id. */
export async function POST(request: Request): Promise<Response> {
  if (!isSameOrigin(request)) return answerRefusal(notFound())
  const viewer = await currentViewer()
  if (!viewer) return answerRefusal(new Refusal('SIGNED_OUT', 'You are signed out. Sign in again; the photo is kept on this device.'))
  const asked = new URL(request.url).searchParams
  const couponId = uuid.safeParse(asked.get('coupon'))
  const id = uuid.safeParse(asked.get('id'))
  if (!couponId.success || !id.success) return answerRefusal(notFound())
  try {
    await checkPhotoPlace(viewer, couponId.data)
    const photo = await keepPhoto(await readLimited(request))
    await addPhoto(viewer, { id: id.data, couponId: couponId.data, photo })
    return answer({ ok: true, value: { id: id.data } })
  } catch (refused) {
    if (refused instanceof Refusal) return answerRefusal(refused)
    throw refused
  }
}

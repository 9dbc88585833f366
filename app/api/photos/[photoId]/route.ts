import { uuid } from '@/lib/schemas/field'
import { currentViewer } from '@/app/_server/auth/viewer'
import { answerRefusal } from '@/app/_server/answer'
import { findPhotoHash } from '@/app/_server/data/photos'
import { readPhoto } from '@/app/_server/photos'
import { notFound, Refusal } from '@/app/_server/refusal'

type Context = { params: Promise<{ photoId: string }> }

/** A photo, to those who may see its coupon. Missing, forbidden and signed out look alike. */
export async function GET(_request: Request, { params }: Context): Promise<Response> {
  const viewer = await currentViewer()
  const id = uuid.safeParse((await params).photoId)
  const sha256 = viewer && !viewer.mustChangePassword && id.success ? await findPhotoHash(viewer, id.data) : null
  try {
    const photo = sha256 ? await readPhoto(sha256, viewer?.locale) : null
    return photo ? picture(photo) : answerRefusal(notFound())
  } catch (refused) {
    if (refused instanceof Refusal) return answerRefusal(refused)
    throw refused
  }
}

const picture = ({ body, byteSize }: NonNullable<Awaited<ReturnType<typeof readPhoto>>>): Response => new Response(body, {
  headers: {
    'Content-Type': 'image/webp',
    ...(byteSize !== null && { 'Content-Length': String(byteSize) }),
    'Content-Disposition': 'inline; filename="coupon.webp"',
    'Cache-Control': 'private, max-age=86400, immutable',
    'Content-Security-Policy': "default-src 'none'; sandbox",
    'Cross-Origin-Resource-Policy': 'same-origin',
  },
})

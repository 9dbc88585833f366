import { uuid } from '@/lib/schemas/field'
import { currentViewer } from '@/app/_server/auth/viewer'
import { answerRefusal } from '@/app/_server/answer'
import { findPhotoHash } from '@/app/_server/data/photos'
import { readPhoto } from '@/app/_server/photos'
import { notFound } from '@/app/_server/refusal'

type Context = { params: Promise<{ photoId: string }> }

/** A photo, to those who may see its coupon. Missing, forbidden and signed out look alike. */
export async function GET(_request: Request, { params }: Context): Promise<Response> {
  const viewer = await currentViewer()
  const id = uuid.safeParse((await params).photoId)
  const sha256 = viewer && !viewer.mustChangePassword && id.success ? await findPhotoHash(viewer, id.data) : null
  const bytes = sha256 ? await readPhoto(sha256) : null
  if (!bytes) return answerRefusal(notFound())
  return new Response(new Uint8Array(bytes), {
    headers: {
      'Content-Type': 'image/webp',
      'Content-Disposition': 'inline; filename="coupon.webp"',
      'Cache-Control': 'private, max-age=86400, immutable',
      'Content-Security-Policy': "default-src 'none'; sandbox",
      'Cross-Origin-Resource-Policy': 'same-origin',
    },
  })
}

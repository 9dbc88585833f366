import { uuid } from '@/lib/schemas/field'
import { measurementSchema } from '@/lib/schemas/photo-measurement'
import { currentViewer } from '@/app/_server/auth/viewer'
import { answer, answerRefusal } from '@/app/_server/answer'
import { saveMeasurement } from '@/app/_server/data/photo-measurements'
import { limitedBody } from '@/app/_server/limited-body'
import { newPasswordFirst, notFound, Refusal } from '@/app/_server/refusal'
import { isSameOrigin } from '@/app/_server/same-origin'

type Context = { params: Promise<{ photoId: string }> }

/** Sixty pairs of marks are well under this. */
const MOST_BYTES = 100_000

/** Takes the marks a person set on a photo that is here already, as JSON. Idempotent: the same marks again change nothing. */
export async function POST(request: Request, { params }: Context): Promise<Response> {
  if (!isSameOrigin(request)) return answerRefusal(notFound())
  const viewer = await currentViewer()
  if (!viewer) return answerRefusal(new Refusal('SIGNED_OUT', 'You are signed out. Sign in again; the marks are kept on this device.'))
  if (viewer.mustChangePassword) return answerRefusal(newPasswordFirst(viewer.locale))
  const photoId = uuid.safeParse((await params).photoId)
  if (!photoId.success) return answerRefusal(notFound(viewer.locale))
  try {
    const parsed = measurementSchema(viewer.locale).safeParse(await jsonOf(request))
    if (!parsed.success) throw new Refusal('INVALID', parsed.error.issues[0]?.message ?? '')
    await saveMeasurement(viewer, { photoId: photoId.data, measurement: parsed.data })
    return answer({ ok: true, value: {} })
  } catch (refused) {
    if (!(refused instanceof Refusal)) throw refused
    return answerRefusal(refused.code === 'NOT_FOUND' ? notFound(viewer.locale) : refused)
  }
}

/** The body as JSON; what is none is no marks, and the schema says so. */
async function jsonOf(request: Request): Promise<unknown> {
  const bytes = await limitedBody(request, MOST_BYTES)
  try {
    return bytes && JSON.parse(bytes.toString('utf8'))
  } catch {
    return null
  }
}

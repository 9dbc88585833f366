import { offline } from '@/lib/language/offline'
import { say } from '@/lib/language/say'
import { couponKey } from '@/lib/schemas/coupon'
import { openQueued } from '@/lib/schemas/queued-coupon'
import { sendCoupon } from '@/app/learn/actions'
import { answer, answerRefusal } from '@/app/_server/answer'
import { currentViewer } from '@/app/_server/auth/viewer'
import { findArrived } from '@/app/_server/data/coupons'
import { limitedBody } from '@/app/_server/limited-body'
import { notFound, Refusal } from '@/app/_server/refusal'
import { isSameOrigin } from '@/app/_server/same-origin'

/** A coupon with sixty stations and two hundred indications as typed is well under this. */
const MOST_BYTES = 400_000

/**
 * Takes one logged coupon as JSON: from a device's queue, whatever version of the app queued it. A coupon logged by someone else than
 * the person signed in is never taken under their name. One that arrived before is answered as arrived whatever has changed since: its
 * class may have ended, its exercise may have a new version.
 */
export async function POST(request: Request): Promise<Response> {
  if (!isSameOrigin(request)) return answerRefusal(notFound())
  const bytes = await limitedBody(request, MOST_BYTES)
  if (!bytes) return answerRefusal(new Refusal('TOO_LARGE', 'This is more than a coupon can hold.'))
  let body: unknown
  try {
    body = JSON.parse(bytes.toString('utf8'))
  } catch {
    return answerRefusal(new Refusal('INVALID', 'This is not a coupon.'))
  }
  const viewer = await currentViewer()
  const queued = openQueued(body)
  if (queued.kind === 'newer') return answerRefusal(new Refusal('CONFLICT', say(offline, viewer?.locale ?? 'en', 'newer')))
  if (viewer && queued.personId !== null && queued.personId !== viewer.personId) return answerRefusal(new Refusal('OTHER_PERSON', say(offline, viewer.locale, 'otherPerson')))
  const key = couponKey.safeParse(queued.coupon)
  const arrived = viewer && !viewer.mustChangePassword && key.success ? await findArrived(viewer, key.data.id) : null
  if (arrived) return answer({ ok: true, value: { ...arrived, created: false } })
  return answer(await sendCoupon(queued.coupon))
}

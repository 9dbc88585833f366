import { sendCoupon } from '@/app/learn/actions'
import { answer, answerRefusal } from '@/app/_server/answer'
import { limitedBody } from '@/app/_server/limited-body'
import { notFound, Refusal } from '@/app/_server/refusal'
import { isSameOrigin } from '@/app/_server/same-origin'

/** A coupon with sixty stations and two hundred indications as typed is well under this. */
const MOST_BYTES = 400_000

/** Takes one logged coupon as JSON: from the log form, and from a device's queue whatever version of the app queued it. */
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
  return answer(await sendCoupon(body))
}

import { leave } from '@/app/_server/auth/enter'
import { currentTablet } from '@/app/_server/auth/tablet'
import { answerRefusal } from '@/app/_server/answer'
import { notFound } from '@/app/_server/refusal'
import { isSameOrigin } from '@/app/_server/same-origin'

/**
 * Leaves, from any page, with or without JavaScript. The browser is told to forget cached pages; not its storage, which may hold a
 * coupon that was not sent yet. A shared tablet is left at the names of its class.
 */
export async function POST(request: Request): Promise<Response> {
  if (!isSameOrigin(request)) return answerRefusal(notFound())
  await leave()
  return new Response(null, { status: 303, headers: { Location: (await currentTablet()) ? '/tablet' : '/sign-in', 'Clear-Site-Data': '"cache"', 'Cache-Control': 'no-store' } })
}

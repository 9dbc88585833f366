import { uuid } from '@/lib/schemas/field'
import { answerRefusal } from '@/app/_server/answer'
import { currentViewer } from '@/app/_server/auth/viewer'
import { classEvents } from '@/app/_server/class-events'
import { queueState, queueStateNow } from '@/app/_server/data/queue'
import { log } from '@/app/_server/log'
import { notFound } from '@/app/_server/refusal'

type Context = { params: Promise<{ classId: string }> }

/**
 * Tells an instructor's open page when what waits in a class has changed. `seen`, or the browser's own Last-Event-ID, is what the page
 * shows already. Missing, forbidden and signed out look alike.
 */
export async function GET(request: Request, { params }: Context): Promise<Response> {
  const viewer = await currentViewer()
  const id = uuid.safeParse((await params).classId)
  if (!viewer || viewer.mustChangePassword || !id.success || (await queueState(viewer, id.data)) === null) return answerRefusal(notFound())
  const seen = request.headers.get('last-event-id') ?? new URL(request.url).searchParams.get('seen')
  try {
    const stream = await classEvents({
      key: { programId: viewer.programId, classId: id.data }, seen, state: () => queueStateNow(viewer, id.data), signal: request.signal,
    })
    return new Response(stream, { headers: { 'Content-Type': 'text/event-stream; charset=utf-8', 'Cache-Control': 'no-store, no-transform', 'X-Accel-Buffering': 'no' } })
  } catch (error) {
    log().warn({ err: error }, 'class events cannot be heard')
    return new Response(null, { status: 503, headers: { 'Cache-Control': 'no-store', 'Retry-After': '5' } })
  }
}

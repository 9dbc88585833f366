import { databaseAnswers } from '@/app/_server/data/health'

export const dynamic = 'force-dynamic'

/** Ready to serve: the database answers. */
export async function GET(): Promise<Response> {
  const ready = await databaseAnswers()
  return Response.json({ ready }, { status: ready ? 200 : 503, headers: { 'Cache-Control': 'no-store' } })
}

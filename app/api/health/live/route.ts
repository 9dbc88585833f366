export const dynamic = 'force-dynamic'

/** The process answers. No I/O. */
export function GET(): Response {
  return Response.json({ live: true }, { headers: { 'Cache-Control': 'no-store' } })
}

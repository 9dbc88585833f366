import { rosterFile } from '@/lib/interchange/roster-file'
import { uuid } from '@/lib/schemas/field'
import { answerRefusal } from '@/app/_server/answer'
import { currentViewer } from '@/app/_server/auth/viewer'
import { rosterOf } from '@/app/_server/data/roster-export'
import { notFound } from '@/app/_server/refusal'

/** Tells a spreadsheet that the text is UTF-8. */
const BYTE_ORDER_MARK = '\uFEFF'

/** The roster of a class as a file that the import takes back. For staff of the class. */
export async function GET(request: Request): Promise<Response> {
  const viewer = await currentViewer()
  const classId = uuid.safeParse(new URL(request.url).searchParams.get('class'))
  const roster = viewer && !viewer.mustChangePassword && classId.success ? await rosterOf(viewer, classId.data) : null
  if (!roster) return answerRefusal(notFound())
  return new Response(BYTE_ORDER_MARK + rosterFile(roster.students), {
    headers: {
      'Content-Type': 'text/csv; charset=utf-8; header=present',
      'Content-Disposition': 'attachment; filename="roster.csv"',
      'Cache-Control': 'no-store',
      'Content-Security-Policy': "default-src 'none'; sandbox",
    },
  })
}

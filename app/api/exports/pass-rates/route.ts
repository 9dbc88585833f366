import { csvText } from '@/lib/interchange/csv'
import { passRatesTable } from '@/lib/reports/pass-rates-table'
import { answerRefusal } from '@/app/_server/answer'
import { currentViewer, hasRole } from '@/app/_server/auth/viewer'
import { notFound } from '@/app/_server/refusal'
import { passRatesView } from '@/app/_server/views/pass-rates'

/** Tells a spreadsheet that the text is UTF-8. */
const BYTE_ORDER_MARK = '\uFEFF'

/** The pass rates of the coordinator's screen as a file: the same view, the same numbers. */
export async function GET(request: Request): Promise<Response> {
  const viewer = await currentViewer()
  if (!viewer || viewer.mustChangePassword || !hasRole(viewer, 'coordinator')) return answerRefusal(notFound())
  const rates = await passRatesView(viewer, new URL(request.url).searchParams.get('term') ?? undefined, new Date())
  return new Response(BYTE_ORDER_MARK + csvText(passRatesTable(rates)), {
    headers: {
      'Content-Type': 'text/csv; charset=utf-8; header=present',
      'Content-Disposition': 'attachment; filename="pass-rates.csv"',
      'Cache-Control': 'no-store',
      'Content-Security-Policy': "default-src 'none'; sandbox",
    },
  })
}

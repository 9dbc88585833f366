import { csvText } from '@/lib/interchange/csv'
import { agreementRows } from '@/lib/reports/agreement-export'
import { answerRefusal } from '@/app/_server/answer'
import { currentViewer, hasRole } from '@/app/_server/auth/viewer'
import { notFound } from '@/app/_server/refusal'
import { programAgreement } from '@/app/_server/views/agreement'

/** Tells a spreadsheet that the text is UTF-8. */
const BYTE_ORDER_MARK = '\uFEFF'

/** The agreement of the coordinator's screen as a file: the same view, the same numbers. */
export async function GET(request: Request): Promise<Response> {
  const viewer = await currentViewer()
  if (!viewer || viewer.mustChangePassword || !hasRole(viewer, 'coordinator')) return answerRefusal(notFound())
  const { report, teller } = await programAgreement(viewer, new URL(request.url).searchParams.get('term') ?? undefined)
  return new Response(BYTE_ORDER_MARK + csvText(agreementRows(report, teller.nameOf)), {
    headers: {
      'Content-Type': 'text/csv; charset=utf-8; header=present',
      'Content-Disposition': 'attachment; filename="agreement.csv"',
      'Cache-Control': 'no-store',
      'Content-Security-Policy': "default-src 'none'; sandbox",
    },
  })
}

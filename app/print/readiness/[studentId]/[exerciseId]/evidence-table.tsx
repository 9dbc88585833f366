import { print } from '@/lib/language/print'
import { say, type Locale } from '@/lib/language/say'
import type { EvidenceRow } from '@/lib/reports/readiness-report'
import { VerdictMark } from '@/app/_components/ui/verdict-mark'
import { PaperTable } from '@/app/print/_parts/paper-table'

/** The coupons the estimate was made from, one line each, with the margin the model read. */
export function EvidenceTable({ rows, locale }: { readonly rows: readonly EvidenceRow[]; readonly locale: Locale }) {
  const told = (key: keyof typeof print.en): string => say(print, locale, key)
  return (
    <section className="print:break-before-page">
      <PaperTable
        caption={told('evidence')} broad
        columns={[
          { key: 'number', head: told('number') }, { key: 'date', head: told('date'), oneLine: true }, { key: 'by', head: told('by') }, { key: 'verdict', head: told('verdict'), oneLine: true },
          { key: 'closest', head: told('closest') }, { key: 'margin', head: told('margin') }, { key: 'scaled', head: told('scaled'), numeric: true }, { key: 'yesNo', head: told('yesNo') },
        ]}
        rows={rows.map((row) => ({
          key: String(row.number),
          cells: [
            row.number, row.date, row.by,
            <span key="verdict" className="flex items-center gap-1.5 [&_svg]:size-[3.4mm]"><VerdictMark verdict={row.verdict} size="small" />{row.verdictWord}</span>,
            row.closest?.rule ?? told('verdictAlone'), row.closest?.margin ?? '–', row.closest?.scaled ?? '–', row.yesNo,
          ],
        }))}
      />
      <p className="mt-1 text-sm leading-snug">{told('scaledNote')}</p>
    </section>
  )
}

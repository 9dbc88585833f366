import { print } from '@/lib/language/print'
import { say, type Locale } from '@/lib/language/say'
import { PaperTable } from '@/app/print/_parts/paper-table'
import type { ProgressSummary } from '@/app/_server/views/progress-summary'
import { ExerciseStory } from './exercise-story'

/** What a progress summary says, above its foot. */
export function SummaryBody({ summary, locale }: { readonly summary: ProgressSummary; readonly locale: Locale }) {
  const told = (key: keyof typeof print.en): string => say(print, locale, key)
  return (
    <>
      <header className="flex flex-wrap items-end justify-between gap-x-6 gap-y-2 print:flex-nowrap border-b-2 border-ink pb-2">
        <div className="min-w-0">
          <p className="eyebrow">{told('summary')}</p>
          <h1 className="text-4xl leading-none">{summary.name}</h1>
          <p className="mt-1 leading-tight">{summary.classes}</p>
          {summary.dates && <p className="leading-tight">{summary.dates}</p>}
        </div>
        <div className="shrink-0 text-right">
          <p className="eyebrow">{told('coupons')}</p>
          <p className="figures text-4xl leading-none">{summary.coupons}</p>
          <p className="mt-1 leading-tight">{summary.arcTime}</p>
        </div>
      </header>
      <p className="text-lg leading-snug print:text-[11.5pt]">{summary.answer.join(' ')}</p>
      {summary.rows.length > 0 && (
        <section>
          <PaperTable
            caption={told('exercise')} captionHidden broad
            columns={[
              { key: 'exercise', head: told('exercise'), wide: true }, { key: 'coupons', head: told('couponsCol'), numeric: true }, { key: 'ten', head: told('lastTenCol'), numeric: true },
              { key: 'mark', head: told('markCol'), numeric: true }, { key: 'chance', head: told('chanceCol'), oneLine: true }, { key: 'agrees', head: told('agreesCol'), numeric: true },
            ]}
            rows={summary.rows.map((row) => ({
              key: row.key, strong: row.testSuggested,
              cells: [
                <span key="title">{row.title}{row.testSuggested && <span className="sr-only">, {told('testSuggested')}</span>}</span>,
                row.coupons, row.lastTen, row.medianMark, row.chance, row.agrees,
              ],
            }))}
          />
          <div className="mt-1 text-sm leading-snug">{summary.notes.map((note) => <p key={note}>{note}</p>)}</div>
        </section>
      )}
      {summary.exercise && <ExerciseStory exercise={summary.exercise} room={summary.room} locale={locale} />}
    </>
  )
}

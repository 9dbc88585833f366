import { myProgress } from '@/lib/language/my-progress'
import { say, type Locale } from '@/lib/language/say'
import type { PassesView } from '@/lib/reports/passes-view'

/** What was run, pass by pass, with travel speed and heat input where they can be worked out. */
export function PassesPanel({ view: { passes, nothing, heatNote }, locale }: { readonly view: PassesView; readonly locale: Locale }) {
  return (
    <section className="grid gap-3">
      <h2 className="text-2xl">{say(myProgress, locale, 'passesTitle')}</h2>
      {nothing && <p>{nothing}</p>}
      <div className="grid gap-x-8 gap-y-4 sm:grid-cols-2">
        {passes.map(({ key, title, rows, missing }) => (
          <div key={key}>
            <h3 className="eyebrow mb-1">{title}</h3>
            <dl className="divide-y divide-line border-y border-line">
              {rows.map((row) => (
                <div key={row.key} className="flex justify-between gap-4 py-1.5">
                  <dt className="text-ink-2">{row.term}</dt>
                  <dd className="text-right font-bold">{row.value}</dd>
                </div>
              ))}
            </dl>
            {missing.map((sentence) => <p key={sentence} className="mt-1 text-base text-ink-2">{sentence}</p>)}
          </div>
        ))}
      </div>
      {heatNote && <p className="text-base text-ink-2">{heatNote}</p>}
    </section>
  )
}

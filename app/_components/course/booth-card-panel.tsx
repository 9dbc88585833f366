import { learn } from '@/lib/language/learn'
import { say, type Locale } from '@/lib/language/say'
import type { BoothCardView, CardRow } from '@/lib/reports/booth-card-view'
import { Notice } from '../ui/notice'

type Props = { readonly card: BoothCardView; readonly locale: Locale; readonly criteria: string }

/** The booth card: what is welded beside how the booth is set, and what the set-up check says of the card. */
export function BoothCardPanel({ card, locale, criteria }: Props) {
  return (
    <section className="grid gap-4">
      <h2 className="text-2xl">{say(learn, locale, 'boothCard')}</h2>
      {card.checks.length > 0 && (
        <Notice kind="problem" word={say(learn, locale, 'setupChecks')}>
          {card.checks.map((check) => <p key={check}>{check}</p>)}
        </Notice>
      )}
      <div className="grid gap-x-8 gap-y-4 sm:grid-cols-2">
        <Rows title={say(learn, locale, 'exerciseFacts')} rows={[...card.facts, { key: 'criteria', term: say(learn, locale, 'criteria'), value: criteria }]} />
        <Rows title={say(learn, locale, 'howSet')} rows={card.settings} />
      </div>
      {card.note && <p>{card.note}</p>}
      <p className="text-base text-ink-2">{say(learn, locale, 'startingPoint')}</p>
    </section>
  )
}

function Rows({ title, rows }: { readonly title: string; readonly rows: readonly CardRow[] }) {
  return (
    <div>
      <h3 className="eyebrow mb-1">{title}</h3>
      <dl className="divide-y divide-line border-y border-line">
        {rows.map((row) => (
          <div key={row.key} className="flex justify-between gap-4 py-1.5">
            <dt className="text-ink-2">{row.term}</dt>
            <dd className="text-right font-bold">{row.value}</dd>
          </div>
        ))}
      </dl>
    </div>
  )
}

import { learn } from '@/lib/language/learn'
import { say, type Locale } from '@/lib/language/say'
import type { AdviceText } from '@/lib/reports/explain-advice'

type Props = { readonly advice: AdviceText; readonly more: readonly AdviceText[]; readonly rejected: boolean; readonly locale: Locale }

/** The one thing that matters most, its likely cause and remedy; the rest folded. Never said as certain. */
export function AdvicePanel({ advice, more, rejected, locale }: Props) {
  return (
    <section className="border-l-[6px] border-ink bg-plate p-4">
      <p className="eyebrow">{say(learn, locale, rejected ? 'changeOne' : 'keepIt')}</p>
      <h2 className="text-2xl">{advice.headline}</h2>
      <p className="mt-1">{advice.because}</p>
      <p className="mt-2 font-bold">{advice.remedy}</p>
      {more.length > 0 && (
        <details className="mt-2">
          <summary className="flex min-h-12 w-fit cursor-pointer items-center font-bold underline underline-offset-4">{say(learn, locale, 'otherThings')}</summary>
          <ul className="grid gap-3">
            {more.map((each) => <li key={each.headline}><span className="font-bold">{each.headline}</span> {each.because} {each.remedy}</li>)}
          </ul>
        </details>
      )}
      <p className="mt-2 text-base text-ink-2">{advice.note}</p>
    </section>
  )
}

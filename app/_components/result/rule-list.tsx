import { scorecardWords } from '@/lib/language/scorecard'
import { learn } from '@/lib/language/learn'
import { say, type Locale } from '@/lib/language/say'
import type { ScorecardView } from '@/lib/reports/scorecard-view'
import { VerdictMark } from '../ui/verdict-mark'

type Props = { readonly card: ScorecardView; readonly locale: Locale }

/** Every rule: what it is, what was read against what is allowed and by whose word; in a sentence where it needs an eye. */
export function RuleList({ card, locale }: Props) {
  return (
    <section>
      <h2 className="text-2xl">{say(learn, locale, 'rules')}</h2>
      <p className="text-ink-2">{card.criteriaTitle}</p>
      <ul className="mt-2 divide-y divide-line border-y border-line">
        {card.lines.map((line) => (
          <li key={line.rule} className="flex gap-3 py-3">
            <VerdictMark verdict={line.verdict} size="small" />
            <div className="min-w-0 flex-1">
              <div className="flex flex-wrap justify-between gap-x-4">
                <h3 className="font-text text-base leading-normal font-bold">
                  {line.name}<span className="sr-only">: {line.verdictWord}.</span>
                </h3>
                <p className="text-right text-lg">{line.reading}</p>
              </div>
              <p className="text-base text-ink-2">
                {say(scorecardWords, locale, 'limit')}: {line.limit}{line.margin && `; ${line.margin}`}
              </p>
              {(line.verdict !== 'accept' || line.closeCall) && <p className="mt-1">{line.sentence}</p>}
              <p className={`text-base ${line.sourceStatus === 'memory' ? 'font-bold' : 'text-ink-2'}`}>{line.source} · {line.sourceStatusWord}</p>
            </div>
          </li>
        ))}
      </ul>
      {card.fromMemory && <p className="mt-2 font-bold">{say(learn, locale, 'fromMemory')}</p>}
    </section>
  )
}

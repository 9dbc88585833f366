import { learn } from '@/lib/language/learn'
import { scorecardWords } from '@/lib/language/scorecard'
import { say, type Locale } from '@/lib/language/say'
import type { ScorecardView } from '@/lib/reports/scorecard-view'

type Replaced = { readonly key: string; readonly title: string; readonly inspector: string; readonly when: string; readonly scorecard: ScorecardView }

/** Looks that a correction replaced, latest first: nothing that was graded goes away. */
export function ReplacedLooks({ looks, locale }: { readonly looks: readonly Replaced[]; readonly locale: Locale }) {
  if (looks.length === 0) return null
  return (
    <section>
      <h2 className="text-2xl">{say(learn, locale, 'earlier')}</h2>
      <ul className="mt-2 list-disc pl-5">
        {looks.map(({ key, title, inspector, when, scorecard }) => (
          <li key={key}>
            {title}: {scorecard.decision?.line ?? scorecard.verdictWord}, {scorecard.mark === null ? say(scorecardWords, locale, 'noMark') : `${say(scorecardWords, locale, 'mark')} ${scorecard.mark}`} ({inspector}, {when})
          </li>
        ))}
      </ul>
    </section>
  )
}

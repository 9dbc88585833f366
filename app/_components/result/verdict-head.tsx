import { gradingWords } from '@/lib/language/grading'
import { scorecardWords } from '@/lib/language/scorecard'
import { say, type Locale } from '@/lib/language/say'
import type { ScorecardView } from '@/lib/reports/scorecard-view'
import { VerdictWord } from '../ui/verdict-word'

/** The answer first: the verdict in large type, and the mark for the grade book. */
export function VerdictHead({ card, locale }: { readonly card: ScorecardView; readonly locale: Locale }) {
  return (
    <div className="flex flex-wrap items-end justify-between gap-4">
      <div>
        <VerdictWord verdict={card.verdict} word={card.verdictWord} size="large" />
        {card.decision && <p className="mt-2 max-w-prose"><span className="font-bold">{card.decision.title}.</span> {card.decision.computed} {say(gradingWords, locale, 'reason', { reason: card.decision.reason })} ({card.decision.by}) {card.mark !== null && say(gradingWords, locale, 'markStays')}</p>}
        {card.verdict === 'incomplete' && <p className="mt-2 max-w-prose">{say(scorecardWords, locale, 'incompleteWhy')}</p>}
      </div>
      <p className="text-right">
        <span className="figures block text-5xl leading-none">{card.mark ?? '–'}</span>
        <span className="eyebrow">{say(scorecardWords, locale, card.mark === null ? 'noMark' : 'mark')}</span>
      </p>
    </div>
  )
}

import { scorecardWords } from '@/lib/language/scorecard'
import { say, type Locale } from '@/lib/language/say'
import { drawBeadStrip } from '@/lib/reports/bead-strip'
import type { Verdict } from '@/lib/scoring/types'
import { VerdictMark } from '@/app/_components/ui/verdict-mark'
import { BeadStripDrawing } from '@/app/_components/weld/bead-strip-drawing'
import type { SummaryStrip } from '@/app/_server/views/progress-story'

type StripListProps = { readonly strips: readonly SummaryStrip[]; readonly compact: boolean; readonly locale: Locale }

/** A column of bead strips, oldest at the top, each with the shape of its verdict and its mark. */
export function StripList({ strips, compact, locale }: StripListProps) {
  const drawn = strips.map((each) => ({ ...each, drawing: drawBeadStrip(each.strip, 'row') }))
  const verdicts = [...new Set(strips.map(({ verdict }) => verdict))]
  const words = drawn[0]?.drawing.words
  return (
    <>
      <ol className="border-y border-line">
        {drawn.map(({ key, label, drawing, verdict, word, mark, note }) => (
          <li key={key} className="flex items-center gap-2 border-b border-line py-[0.5mm] last:border-b-0">
            <span className="w-14 shrink-0 text-base leading-none font-bold print:w-[13mm] print:text-[9.5pt]">{label}{note && <span className="block font-normal">{note}</span>}</span>
            <span className="min-w-0 flex-1"><BeadStripDrawing strip={drawing} label={`${label}. ${drawing.words.description}`} className={compact ? 'max-h-[8.8mm]' : 'max-h-[12mm]'} /></span>
            <span className="flex w-14 shrink-0 items-center gap-1.5 print:w-[13mm]">
              <VerdictMark verdict={verdict} size="small" />
              <span className="sr-only">{word}</span>
              <span className="figures text-lg leading-none print:text-[11pt]">{mark}</span>
            </span>
          </li>
        ))}
      </ol>
      {words && (
        <p className="mt-1 flex flex-wrap gap-x-3 text-sm leading-snug">
          {verdicts.map((verdict) => <VerdictKey key={verdict} verdict={verdict} locale={locale} />)}
          <span>{words.ends} {words.scale}</span>
        </p>
      )}
    </>
  )
}

function VerdictKey({ verdict, locale }: { readonly verdict: Verdict; readonly locale: Locale }) {
  return <span className="inline-flex items-center gap-1"><VerdictMark verdict={verdict} size="small" />{say(scorecardWords, locale, verdict)}</span>
}

import type { ReactNode } from 'react'
import { learn } from '@/lib/language/learn'
import { say, type Locale } from '@/lib/language/say'
import type { ScorecardLine, ScorecardView } from '@/lib/reports/scorecard-view'
import { VerdictMark } from '../ui/verdict-mark'

type Look = { readonly title: string; readonly scorecard: ScorecardView }
type Props = { readonly first: Look; readonly second: Look; readonly locale: Locale }

/** A rule as both looks judged it. */
type Pair = { readonly line: ScorecardLine; readonly other: ScorecardLine; readonly same: boolean }

/** The rules that both looks judged, in order; what applies to neither look is no agreement and is left out. */
export function pairsOf(first: ScorecardView, second: ScorecardView): Pair[] {
  const others = new Map(second.lines.map((line) => [line.rule, line]))
  return first.lines.flatMap((line) => {
    const other = others.get(line.rule)
    return other && !(line.verdict === 'not-applicable' && other.verdict === 'not-applicable') ? [{ line, other, same: other.verdict === line.verdict }] : []
  })
}

/** Two looks at one coupon: on how many rules they agree, then rule by rule the reading and verdict of each. */
export function TwoLooks({ first, second, locale }: Props) {
  const pairs = pairsOf(first.scorecard, second.scorecard)
  return (
    <section className="grid gap-2">
      <h2 className="text-2xl">{say(learn, locale, 'sideBySide')}</h2>
      <p>{say(learn, locale, 'sideCount', { same: pairs.filter(({ same }) => same).length, of: pairs.length })}</p>
      <LookTable first={first} second={second} pairs={pairs} caption={say(learn, locale, 'sideBySide')} locale={locale} />
    </section>
  )
}

type TableProps = Props & { readonly pairs: readonly Pair[]; readonly caption: string }

/** Both verdicts, then the reading and verdict of each look for the rules given. */
export function LookTable({ first, second, pairs, caption, locale }: TableProps) {
  return (
    <table className="w-full max-w-3xl table-fixed border-collapse text-left">
      <caption className="sr-only">{caption}</caption>
      <thead>
        <tr className="border-b-2 border-ink">
          {[say(learn, locale, 'rule'), first.title, second.title].map((head) => (
            <th key={head} scope="col" className="py-2 pr-2 align-bottom font-head text-lg leading-tight font-semibold">{head}</th>
          ))}
        </tr>
      </thead>
      <tbody>
        <Line name={say(learn, locale, 'verdict')} first={<Verdict card={first.scorecard} />} second={<Verdict card={second.scorecard} />} />
        {pairs.map(({ line, other, same }) => (
          <Line key={line.rule} name={line.name} note={same ? null : say(learn, locale, 'differs')} first={<Cell line={line} />} second={<Cell line={other} />} />
        ))}
      </tbody>
    </table>
  )
}

type LineProps = { readonly name: string; readonly note?: string | null; readonly first: ReactNode; readonly second: ReactNode }

function Line({ name, note = null, first, second }: LineProps) {
  return (
    <tr className="border-b border-line">
      <th scope="row" className="py-2 pr-2 leading-tight font-bold">{name}{note && <span className="block text-base font-normal">{note}</span>}</th>
      <td className="py-2 pr-2 leading-tight">{first}</td>
      <td className="py-2 leading-tight">{second}</td>
    </tr>
  )
}

function Cell({ line }: { readonly line: ScorecardLine }) {
  return (
    <span className="flex items-center gap-2">
      <VerdictMark verdict={line.verdict} size="small" />
      <span><span className="sr-only">{line.verdictWord}. </span>{line.reading}</span>
    </span>
  )
}

function Verdict({ card }: { readonly card: ScorecardView }) {
  return (
    <span className="flex items-center gap-2">
      <VerdictMark verdict={card.verdict} size="small" />
      <span className="font-bold">{card.verdictWord}{card.mark !== null && `, ${card.mark}`}{card.decision && <span className="block text-base font-normal">{card.decision.title}</span>}</span>
    </span>
  )
}

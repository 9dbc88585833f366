import { learn } from '@/lib/language/learn'
import { say, type Locale } from '@/lib/language/say'
import type { ScorecardLine, ScorecardView } from '@/lib/reports/scorecard-view'
import { Table } from '../ui/table'
import { VerdictMark } from '../ui/verdict-mark'

type Look = { readonly title: string; readonly scorecard: ScorecardView }
type Props = { readonly first: Look; readonly second: Look; readonly locale: Locale }

/** Two looks at one coupon: on how many rules they agree, then rule by rule the reading and verdict of each. */
export function TwoLooks({ first, second, locale }: Props) {
  const others = new Map(second.scorecard.lines.map((line) => [line.rule, line]))
  const pairs = first.scorecard.lines.flatMap((line) => {
    const other = others.get(line.rule)
    return other ? [{ line, other, same: other.verdict === line.verdict }] : []
  })
  return (
    <section className="grid gap-2">
      <h2 className="text-2xl">{say(learn, locale, 'sideBySide')}</h2>
      <p>{say(learn, locale, 'sideCount', { same: pairs.filter(({ same }) => same).length, of: pairs.length })}</p>
      <Table
        caption={say(learn, locale, 'sideBySide')} captionHidden
        columns={[{ key: 'rule', head: say(learn, locale, 'rule') }, { key: 'first', head: first.title }, { key: 'second', head: second.title }]}
        rows={[
          { key: 'whole', cells: [say(learn, locale, 'verdict'), <Verdict key="a" card={first.scorecard} />, <Verdict key="b" card={second.scorecard} />] },
          ...pairs.map(({ line, other, same }) => ({
            key: line.rule,
            cells: [
              <span key="name">{line.name}{!same && <span className="block text-base font-normal">{say(learn, locale, 'differs')}</span>}</span>,
              <Cell key="a" line={line} />, <Cell key="b" line={other} />,
            ],
          })),
        ]}
      />
    </section>
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
      <span className="font-bold">{card.verdictWord}{card.mark !== null && `, ${card.mark}`}</span>
    </span>
  )
}

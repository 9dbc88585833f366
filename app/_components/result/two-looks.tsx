import { learn } from '@/lib/language/learn'
import { say, type Locale } from '@/lib/language/say'
import type { ScorecardLine, ScorecardView } from '@/lib/reports/scorecard-view'
import { Table } from '../ui/table'
import { VerdictMark } from '../ui/verdict-mark'

type Look = { readonly title: string; readonly scorecard: ScorecardView }
type Props = { readonly first: Look; readonly second: Look; readonly locale: Locale }

/** Two looks at one coupon, rule by rule: the reading and verdict of each, and whether they agree. */
export function TwoLooks({ first, second, locale }: Props) {
  const others = new Map(second.scorecard.lines.map((line) => [line.rule, line]))
  return (
    <section className="grid gap-2">
      <Table
        caption={say(learn, locale, 'sideBySide')}
        columns={[
          { key: 'rule', head: say(learn, locale, 'rules') }, { key: 'first', head: first.title }, { key: 'second', head: second.title },
          { key: 'same', head: <span className="sr-only">{say(learn, locale, 'same')}</span> },
        ]}
        rows={first.scorecard.lines.map((line) => {
          const other = others.get(line.rule)
          return { key: line.rule, cells: [line.name, <Cell key="a" line={line} />, other ? <Cell key="b" line={other} /> : '–', say(learn, locale, other?.verdict === line.verdict ? 'same' : 'differs')] }
        })}
      />
      <p className="text-ink-2">{say(learn, locale, 'sideLead')}</p>
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

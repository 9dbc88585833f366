import type { PlannedLine } from '@/lib/interchange/roster-plan'
import { Table } from '@/app/_components/ui/table'

const OUTCOMES = ['rejected', 'changed', 'added', 'unchanged'] as const
/** Lines listed of each kind; the counts are of all. */
const MOST_LISTED = 200

type Props = { readonly lines: readonly PlannedLine[]; readonly ignoredColumns: readonly string[] }

const whoOf = (line: PlannedLine): string => (line.outcome === 'rejected' ? '' : `${line.student.givenName} ${line.student.familyName} (${line.student.signInName})`)
const whyOf = (line: PlannedLine): string => (line.outcome === 'unchanged' ? '' : line.reason)

/** What each line of a roster does, what needs mending first. */
export function RosterPlanTable({ lines, ignoredColumns }: Props) {
  const groups = OUTCOMES.map((outcome) => ({ outcome, lines: lines.filter((line) => line.outcome === outcome) }))
  const listed = groups.flatMap((group) => group.lines.slice(0, MOST_LISTED))
  return (
    <div className="grid gap-3">
      <p role="status">
        {`Nothing is written yet. ${['added', 'changed', 'unchanged', 'rejected'].map((outcome) => `${groups.find((group) => group.outcome === outcome)?.lines.length ?? 0} ${outcome}`).join(', ')}.`}
        {ignoredColumns.length > 0 && ` Columns left out: ${ignoredColumns.join(', ')}.`}
        {listed.length < lines.length && ` The first ${MOST_LISTED} lines of each kind are listed.`}
      </p>
      <Table
        caption="What each line does"
        columns={[{ key: 'line', head: 'Line', numeric: true }, { key: 'does', head: 'Outcome' }, { key: 'who', head: 'Student' }, { key: 'why', head: 'What or why' }]}
        rows={listed.map((line) => ({ key: String(line.line), cells: [line.line, line.outcome, whoOf(line), whyOf(line)] }))}
        rowHeads={false}
      />
    </div>
  )
}

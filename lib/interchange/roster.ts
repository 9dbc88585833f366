import { withoutGuard } from './csv'
import { rosterRecords, type RosterRecord } from './roster-text'

/** The most students one file may bring. */
export const MOST_ROSTER_ROWS = 5000

export type RosterColumn = 'signInName' | 'givenName' | 'familyName' | 'booth' | 'role'

/** One student as a file names them. `booth` null: the file does not say, and what is known stays. */
export type RosterStudent = { readonly signInName: string; readonly givenName: string; readonly familyName: string; readonly booth: number | null }

/** A line of the file: a student, or why it cannot be one. */
export type RosterLine =
  | { readonly line: number; readonly student: RosterStudent }
  | { readonly line: number; readonly rejected: string }

export type RosterFile = { readonly lines: readonly RosterLine[]; readonly ignoredColumns: readonly string[] }

/**
 * Heads a column may carry, without spaces, hyphens and case. username, givenName, familyName and role are those of users.csv in
 * OneRoster 1.2 (1EdTech), named from memory; the others are what people write, no source.
 */
const HEADS: Readonly<Record<string, RosterColumn>> = {
  signinname: 'signInName', signin: 'signInName', username: 'signInName', login: 'signInName',
  givenname: 'givenName', firstname: 'givenName', forename: 'givenName',
  familyname: 'familyName', lastname: 'familyName', surname: 'familyName',
  booth: 'booth', boothnumber: 'booth',
  role: 'role',
}
const NEEDED = { signInName: 'sign-in name', givenName: 'given name', familyName: 'family name' } as const

const columnOf = (head: string): RosterColumn | undefined => {
  const key = head.toLowerCase().replace(/[\s_-]/g, '')
  return Object.hasOwn(HEADS, key) ? HEADS[key] : undefined
}

/** Checks one student's texts; the app's own rules for names are given, so that a roster and a form agree. */
export type CheckNames = (names: { signInName: string; givenName: string; familyName: string }) =>
  { readonly ok: true; readonly names: { signInName: string; givenName: string; familyName: string } } | { readonly ok: false; readonly reason: string }

/**
 * Reads a roster: every line after the header as a student or as rejected with a reason, in the file's order.
 *
 * @throws RangeError with a sentence for the person when the file as a whole cannot be read: no header, a needed column missing or
 *   there twice, more than MOST_ROSTER_ROWS lines, a quote never closed
 */
export function readRoster(text: string, check: CheckNames): RosterFile {
  const [header, ...records] = rosterRecords(text)
  if (!header) throw new RangeError('There is nothing in this file. Its first line names the columns: sign-in name, given name, family name, booth.')
  const columns = columnsOf(header)
  if (records.length > MOST_ROSTER_ROWS) {
    throw new RangeError(`This file has ${records.length} lines of students; at most ${MOST_ROSTER_ROWS} are taken at a time. Split it.`)
  }
  const seenOn = new Map<string, number>()
  return {
    lines: records.map((record) => lineOf(record, header.cells.length, columns, seenOn, check)),
    ignoredColumns: header.cells.filter((head) => head !== '' && columnOf(head) === undefined),
  }
}

function columnsOf(header: RosterRecord): ReadonlyMap<RosterColumn, number> {
  const columns = new Map<RosterColumn, number>()
  header.cells.forEach((head, index) => {
    const column = columnOf(head)
    if (column === undefined) return
    const before = columns.get(column)
    if (before !== undefined) throw new RangeError(`The columns “${header.cells[before]}” and “${head}” mean the same. Keep one of them.`)
    columns.set(column, index)
  })
  const missing = Object.entries(NEEDED).filter(([column]) => !columns.has(column as RosterColumn)).map(([, words]) => words)
  if (missing.length > 0) throw new RangeError(`The first line names the columns, and it has no column for: ${missing.join(', ')}.`)
  return columns
}

function lineOf(record: RosterRecord, width: number, columns: ReadonlyMap<RosterColumn, number>, seenOn: Map<string, number>, check: CheckNames): RosterLine {
  const { line } = record
  const rejected = (reason: string): RosterLine => ({ line, rejected: reason })
  if (record.cells.slice(width).some((cell) => cell !== '')) return rejected(`This line has ${record.cells.length} cells where the header has ${width}.`)
  const cell = (column: RosterColumn): string => withoutGuard(record.cells[columns.get(column) ?? -1] ?? '')
  const role = cell('role').toLowerCase()
  if (role !== '' && role !== 'student') return rejected(`The role is “${cell('role')}”; a roster brings students only.`)
  const checked = check({ signInName: cell('signInName'), givenName: cell('givenName'), familyName: cell('familyName') })
  if (!checked.ok) return rejected(checked.reason)
  const booth = cell('booth')
  if (booth !== '' && !/^[1-9]\d{0,2}$/.test(booth)) return rejected(`The booth is “${booth}”; it must be a whole number from 1 to 999, or empty.`)
  const { signInName } = checked.names
  const before = seenOn.get(signInName)
  if (before !== undefined) return rejected(`“${signInName}” is on line ${before} already.`)
  seenOn.set(signInName, line)
  return { line, student: { ...checked.names, booth: booth === '' ? null : Number(booth) } }
}

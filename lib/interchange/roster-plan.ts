import type { RosterLine, RosterStudent } from './roster'

/** A person already in the program under a sign-in name, and where they stand in the class. */
export type KnownPerson = {
  readonly id: string
  readonly givenName: string
  readonly familyName: string
  /** Instructors and coordinators are not changed by a roster. */
  readonly staff: boolean
  readonly disabled: boolean
  /** null: never in this class. */
  readonly enrolment: { readonly booth: number | null; readonly withdrawn: boolean } | null
}

/** What a line of a roster does. `personId` null: a new account. */
export type PlannedLine =
  | { readonly line: number; readonly outcome: 'rejected'; readonly reason: string }
  | { readonly line: number; readonly outcome: 'unchanged'; readonly student: RosterStudent }
  | { readonly line: number; readonly outcome: 'added'; readonly student: RosterStudent; readonly personId: string | null; readonly reason: string }
  | { readonly line: number; readonly outcome: 'changed'; readonly student: RosterStudent; readonly personId: string; readonly reason: string }

/** What each line does to the people who are there now. Nobody leaves a class because a file does not name them. */
export function planRoster(lines: readonly RosterLine[], known: ReadonlyMap<string, KnownPerson>): PlannedLine[] {
  return lines.map((line) => ('rejected' in line ? { line: line.line, outcome: 'rejected', reason: line.rejected } : plan(line.line, line.student, known.get(line.student.signInName))))
}

function plan(line: number, student: RosterStudent, person: KnownPerson | undefined): PlannedLine {
  if (!person) return { line, outcome: 'added', student, personId: null, reason: 'new account' }
  if (person.staff) return { line, outcome: 'rejected', reason: `“${student.signInName}” is the sign-in name of an instructor or coordinator.` }
  if (person.disabled) return { line, outcome: 'rejected', reason: `The account “${student.signInName}” is disabled.` }
  const renamed = person.givenName !== student.givenName || person.familyName !== student.familyName
    ? [`name ${person.givenName} ${person.familyName} → ${student.givenName} ${student.familyName}`] : []
  const { enrolment } = person
  if (!enrolment) return { line, outcome: 'added', student, personId: person.id, reason: ['has an account, joins this class', ...renamed].join('; ') }
  const moved = student.booth !== null && student.booth !== enrolment.booth ? [`booth ${enrolment.booth ?? 'none'} → ${student.booth}`] : []
  const changes = [...(enrolment.withdrawn ? ['readmitted'] : []), ...renamed, ...moved]
  return changes.length === 0
    ? { line, outcome: 'unchanged', student }
    : { line, outcome: 'changed', student, personId: person.id, reason: changes.join('; ') }
}

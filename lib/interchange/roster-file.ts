import { csvText } from './csv'
import type { RosterStudent } from './roster'

/**
 * A roster as a file that readRoster takes back as it was: one student a line under the heads that OneRoster 1.2 (1EdTech) gives its
 * users.csv, from memory, and the booth. Commas, quotes, line ends and the guard against formulas: see csvText.
 */
export function rosterFile(students: readonly RosterStudent[]): string {
  return csvText([
    ['username', 'givenName', 'familyName', 'booth'],
    ...students.map(({ signInName, givenName, familyName, booth }) => [signInName, givenName, familyName, booth]),
  ])
}

/** What the audit rows of an account are called, in the past. Actions that are not here are about practice, not about the account. */
const SAID: Readonly<Record<string, string>> = {
  'person.make': 'Account made', 'person.change': 'Name changed', 'person.disable': 'Account disabled', 'person.enable': 'Account enabled',
  'person.password': 'Password replaced', 'person.password.reset': 'New first password made', 'person.pin': 'PIN set', 'person.pin.reset': 'New PIN made',
  'person.role.give': 'Role given', 'person.role.take': 'Role taken', 'session.end-all': 'Signed out everywhere', 'session.end-others': 'Signed out elsewhere',
  'enrolment.withdraw': 'Withdrawn from a class', 'enrolment.readmit': 'Readmitted to a class', 'enrolment.move': 'Moved to another class',
  'roster.added': 'Added by a roster', 'roster.changed': 'Changed by a roster',
}

/** The actions whose rows make up an account's history. */
export const ACCOUNT_ACTIONS: readonly string[] = Object.keys(SAID)

/**
 * One line of an account's history: what was done and, where the row says, to what: 'Role given: instructor'.
 *
 * @param after the audit row's document, as stored
 * @throws RangeError for an action that is not of an account
 */
export function accountEventText(action: string, after: unknown): string {
  const said = SAID[action]
  if (said === undefined) throw new RangeError(`“${action}” is not in the history of an account.`)
  const held = typeof after === 'object' && after !== null ? (after as Readonly<Record<string, unknown>>) : {}
  const more = [held['role'], held['what']].find((each): each is string => typeof each === 'string')
  return more === undefined ? said : `${said}: ${more}`
}

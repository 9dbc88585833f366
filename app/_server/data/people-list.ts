import 'server-only'
import { ACCOUNT_ACTIONS, accountEventText } from '@/lib/reports/account-history'
import { fullName } from '@/lib/reports/full-name'
import type { PeopleOptions, PersonState } from '@/lib/reports/people-options'
import type { Prisma } from '@/prisma/generated/client'
import { liveNow } from '../auth/sessions'
import { hasRole, type Role, type Viewer } from '../auth/viewer'
import { db } from '../db'
import { beyondName, namedLike } from './by-name'

/** How many people a page of the list holds. */
export const PEOPLE_A_PAGE = 50

export type ListedPerson = {
  readonly id: string
  readonly name: string
  readonly signInName: string
  readonly roles: readonly Role[]
  /** Open classes the person is in or teaches. */
  readonly classes: readonly string[]
  readonly state: PersonState
  readonly lastSignIn: Date | null
}

/** `before` and `after`: from whom the page before and the page after are read; null where there is none. */
export type PeoplePage = { readonly people: readonly ListedPerson[]; readonly total: number; readonly before: string | null; readonly after: string | null }

type Account = { readonly disabledAt: Date | null; readonly passwordHash: string | null; readonly oidcSubject: string | null }

function stateOf({ disabledAt, passwordHash, oidcSubject }: Account): PersonState {
  if (disabledAt) return 'disabled'
  return passwordHash === null && oidcSubject === null ? 'no-password' : 'active'
}

const STATES: Readonly<Record<PersonState, Prisma.PersonWhereInput>> = {
  active: { disabledAt: null, OR: [{ passwordHash: { not: null } }, { oidcSubject: { not: null } }] },
  'no-password': { disabledAt: null, passwordHash: null, oidcSubject: null },
  disabled: { disabledAt: { not: null } },
}

/** The people a list asks for. */
function asked(programId: string, { search, role, classId, state }: PeopleOptions): Prisma.PersonWhereInput {
  return {
    programId,
    AND: [
      ...namedLike(search),
      ...(role ? [{ memberships: { some: { programId, role } } }] : []),
      ...(classId ? [{ OR: [{ enrolments: { some: { programId, classId, withdrawnAt: null } } }, { teaches: { some: { programId, classId } } }] }] : []),
      ...(state ? [STATES[state]] : []),
    ],
  }
}

/**
 * A page of the program's people by name. Pages are found by the person they follow, not by counting from the start: somebody who joins
 * meanwhile neither doubles a line nor hides one. null for anyone but a coordinator.
 */
export async function listPeople(viewer: Viewer, options: PeopleOptions): Promise<PeoplePage | null> {
  if (!hasRole(viewer, 'coordinator')) return null
  const { programId } = viewer
  const filter = asked(programId, options)
  const back = options.after === null && options.before !== null
  const from = options.after ?? options.before
  const anchor = from === null ? null : await db().person.findUnique({ where: { programId_id: { programId, id: from } }, select: { familyName: true, givenName: true, id: true } })
  const order = anchor && back ? 'desc' : 'asc'
  const [rows, total] = await Promise.all([
    db().person.findMany({
      where: anchor ? { AND: [filter, beyondName(anchor, back ? 'lt' : 'gt')] } : filter,
      orderBy: [{ familyName: order }, { givenName: order }, { id: order }], take: PEOPLE_A_PAGE + 1,
      select: {
        id: true, givenName: true, familyName: true, signInName: true, disabledAt: true, passwordHash: true, oidcSubject: true,
        memberships: { select: { role: true }, orderBy: { role: 'asc' } },
        enrolments: { where: { withdrawnAt: null, class: { archivedAt: null } }, select: { class: { select: { name: true } } } },
        teaches: { where: { class: { archivedAt: null } }, select: { class: { select: { name: true } } } },
      },
    }),
    db().person.count({ where: filter }),
  ])
  const more = rows.length > PEOPLE_A_PAGE
  const shown = rows.slice(0, PEOPLE_A_PAGE)
  if (order === 'desc') shown.reverse()
  const last = await lastSignIns(programId, shown.map(({ id }) => id))
  return {
    total,
    before: (order === 'desc' ? more : anchor !== null) ? (shown[0]?.id ?? null) : null,
    after: (order === 'desc' ? true : more) ? (shown.at(-1)?.id ?? null) : null,
    people: shown.map(({ memberships, enrolments, teaches, ...person }) => ({
      id: person.id, name: fullName(person), signInName: person.signInName, roles: memberships.map(({ role }) => role), state: stateOf(person),
      classes: [...new Set([...teaches, ...enrolments].map((each) => each.class.name))].sort(), lastSignIn: last.get(person.id) ?? null,
    })),
  }
}

async function lastSignIns(programId: string, personIds: readonly string[]): Promise<ReadonlyMap<string, Date>> {
  const rows = await db().signInSession.groupBy({ by: ['personId'], where: { programId, personId: { in: [...personIds] } }, _max: { createdAt: true } })
  return new Map(rows.flatMap(({ personId, _max }) => (_max.createdAt ? [[personId, _max.createdAt] as const] : [])))
}

export type PlaceInClass = { readonly classId: string; readonly name: string; readonly term: string; readonly archived: boolean; readonly withdrawn: boolean }

export type PersonDetail = Omit<ListedPerson, 'classes'> & {
  readonly givenName: string
  readonly familyName: string
  readonly self: boolean
  readonly since: Date
  readonly mustChangePassword: boolean
  readonly hasPin: boolean
  readonly teaches: readonly PlaceInClass[]
  readonly attends: readonly PlaceInClass[]
  /** Where they are signed in now, the latest first. */
  readonly sessions: readonly { readonly id: string; readonly device: string | null; readonly tablet: string | null; readonly since: Date; readonly lastSeen: Date }[]
}

const classSelect = { select: { id: true, name: true, archivedAt: true, term: { select: { name: true } } } } as const
type ClassRow = { id: string; name: string; archivedAt: Date | null; term: { name: string } }
const placeOf = (row: { class: ClassRow; withdrawnAt?: Date | null }): PlaceInClass => ({
  classId: row.class.id, name: row.class.name, term: row.class.term.name, archived: row.class.archivedAt !== null, withdrawn: Boolean(row.withdrawnAt),
})

/** One person of the program with roles, classes and sessions; null when there is no such person, and for anyone but a coordinator. */
export async function findPerson(viewer: Viewer, personId: string): Promise<PersonDetail | null> {
  if (!hasRole(viewer, 'coordinator')) return null
  const { programId } = viewer
  const found = await db().person.findUnique({
    where: { programId_id: { programId, id: personId } },
    select: {
      id: true, givenName: true, familyName: true, signInName: true, disabledAt: true, passwordHash: true, oidcSubject: true, pinHash: true, mustChangePassword: true, createdAt: true,
      memberships: { select: { role: true }, orderBy: { role: 'asc' } },
      enrolments: { select: { withdrawnAt: true, class: classSelect }, orderBy: { joinedAt: 'desc' } },
      teaches: { select: { class: classSelect }, orderBy: { createdAt: 'desc' } },
      sessions: {
        where: liveNow(), orderBy: { lastSeenAt: 'desc' }, take: 20,
        select: { id: true, device: true, createdAt: true, lastSeenAt: true, tablet: { select: { name: true } } },
      },
    },
  })
  if (!found) return null
  const last = await lastSignIns(programId, [found.id])
  return {
    id: found.id, name: fullName(found), givenName: found.givenName, familyName: found.familyName, signInName: found.signInName, roles: found.memberships.map(({ role }) => role), state: stateOf(found),
    self: found.id === viewer.personId, since: found.createdAt, lastSignIn: last.get(found.id) ?? null,
    mustChangePassword: found.mustChangePassword, hasPin: found.pinHash !== null,
    teaches: found.teaches.map(placeOf), attends: found.enrolments.map(placeOf),
    sessions: found.sessions.map(({ id, device, createdAt, lastSeenAt, tablet }) => ({ id, device, tablet: tablet?.name ?? null, since: createdAt, lastSeen: lastSeenAt })),
  }
}

/** How many lines of an account's history are shown. */
const HISTORY_LINES = 20

/** `by`: who did it; null for a job of the server's own. */
export type AccountEvent = { readonly id: string; readonly at: Date; readonly by: string | null; readonly text: string }

/** What was done to an account, the latest first. Empty for anyone but a coordinator. */
export async function listAccountHistory(viewer: Viewer, personId: string): Promise<AccountEvent[]> {
  if (!hasRole(viewer, 'coordinator')) return []
  const rows = await db().auditEvent.findMany({
    where: { programId: viewer.programId, subjectType: 'person', subjectId: personId, action: { in: [...ACCOUNT_ACTIONS] } },
    orderBy: [{ at: 'desc' }, { id: 'desc' }], take: HISTORY_LINES,
    select: { id: true, at: true, action: true, after: true, actor: { select: { givenName: true, familyName: true } } },
  })
  return rows.map(({ id, at, action, after, actor }) => ({ id, at, by: actor && fullName(actor), text: accountEventText(action, after) }))
}

import 'server-only'
import { fullName } from '@/lib/reports/full-name'
import type { PeopleOptions } from '@/lib/reports/people-options'
import type { Prisma } from '@/prisma/generated/client'
import type { Viewer } from '../auth/viewer'
import { db } from '../db'
import { beyondName, namedLike, type NameKey } from './by-name'
import { staffClassScope } from './scope'

/** How many students a page of a roster holds. */
export const ROSTER_A_PAGE = 50

export type RosterEntry = {
  readonly id: string
  readonly name: string
  readonly signInName: string
  readonly booth: number | null
  readonly withdrawnAt: Date | null
  /** Their account lets them in no more, wherever they are enrolled. */
  readonly disabled: boolean
  /** An instructor or coordinator as well, whose password only the coordinator resets. */
  readonly staff: boolean
  /** Or an account of the school's identity provider. */
  readonly hasPassword: boolean
  readonly hasPin: boolean
}

const accountSelect = {
  id: true, givenName: true, familyName: true, signInName: true, disabledAt: true, passwordHash: true, oidcSubject: true, pinHash: true, memberships: { select: { role: true } },
} as const

/** `before` and `after`: from whom the page before and the page after are read; null where there is none. The counts are of the whole class. */
export type RosterPage = {
  readonly students: readonly RosterEntry[]
  /** Who fits the search. */
  readonly found: number
  readonly active: number
  readonly withdrawn: number
  /** Active students with nothing to sign in with yet, whose password an instructor can make. */
  readonly withoutPassword: number
  readonly before: string | null
  readonly after: string | null
}

type Anchor = NameKey & { readonly withdrawnAt: Date | null }

/** Those who come after a student in the roster, or before them: the active by name, then the withdrawn by the day they left. */
function beyond({ withdrawnAt, ...name }: Anchor, way: 'gt' | 'lt'): Prisma.EnrolmentWhereInput {
  const person = beyondName(name, way)
  const otherDays: Prisma.EnrolmentWhereInput[] = withdrawnAt === null
    ? (way === 'gt' ? [{ withdrawnAt: { not: null } }] : [])
    : [{ withdrawnAt: { [way]: withdrawnAt } }, ...(way === 'lt' ? [{ withdrawnAt: null }] : [])]
  return { OR: [{ withdrawnAt, person }, ...otherDays] }
}

async function anchorOf(programId: string, classId: string, personId: string): Promise<Anchor | null> {
  const row = await db().enrolment.findUnique({
    where: { programId_classId_personId: { programId, classId, personId } },
    select: { withdrawnAt: true, person: { select: { id: true, givenName: true, familyName: true } } },
  })
  return row && { ...row.person, withdrawnAt: row.withdrawnAt }
}

/**
 * A page of those who are or were enrolled in a class, by name, those withdrawn last. Pages are found by the student they follow, as in
 * the list of people. Staff of the class only; null for anyone else.
 */
export async function listRoster(viewer: Viewer, classId: string, { search, after, before }: Pick<PeopleOptions, 'search' | 'after' | 'before'>): Promise<RosterPage | null> {
  const { programId } = viewer
  if (!(await db().class.findFirst({ where: { AND: [{ id: classId }, staffClassScope(viewer)] }, select: { id: true } }))) return null
  const whole: Prisma.EnrolmentWhereInput = { programId, classId, class: staffClassScope(viewer) }
  const asked: Prisma.EnrolmentWhereInput = { AND: [whole, { person: { AND: namedLike(search) } }] }
  const back = after === null && before !== null
  const from = after ?? before
  const anchor = from === null ? null : await anchorOf(programId, classId, from)
  const order = anchor && back ? 'desc' : 'asc'
  const active = { AND: [whole, { withdrawnAt: null }] }
  const [rows, found, activeCount, all, withoutPassword] = await Promise.all([
    db().enrolment.findMany({
      where: anchor ? { AND: [asked, beyond(anchor, back ? 'lt' : 'gt')] } : asked,
      orderBy: [{ withdrawnAt: { sort: order, nulls: order === 'asc' ? 'first' : 'last' } }, { person: { familyName: order } }, { person: { givenName: order } }, { personId: order }],
      take: ROSTER_A_PAGE + 1, select: { booth: true, withdrawnAt: true, person: { select: accountSelect } },
    }),
    db().enrolment.count({ where: asked }),
    db().enrolment.count({ where: active }),
    db().enrolment.count({ where: whole }),
    db().enrolment.count({ where: { AND: [active, { person: { disabledAt: null, passwordHash: null, oidcSubject: null, memberships: { every: { role: 'student' } } } }] } }),
  ])
  const more = rows.length > ROSTER_A_PAGE
  const shown = rows.slice(0, ROSTER_A_PAGE)
  if (order === 'desc') shown.reverse()
  return {
    found, active: activeCount, withdrawn: all - activeCount, withoutPassword,
    before: (order === 'desc' ? more : anchor !== null) ? (shown[0]?.person.id ?? null) : null,
    after: (order === 'desc' ? true : more) ? (shown.at(-1)?.person.id ?? null) : null,
    students: shown.map(({ person, ...row }) => ({
      ...row, id: person.id, name: fullName(person), signInName: person.signInName, disabled: person.disabledAt !== null,
      staff: person.memberships.some(({ role }) => role !== 'student'), hasPassword: person.passwordHash !== null || person.oidcSubject !== null, hasPin: person.pinHash !== null,
    })),
  }
}

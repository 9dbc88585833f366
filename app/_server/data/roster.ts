import 'server-only'
import { createHash } from 'node:crypto'
import { readRoster } from '@/lib/interchange/roster'
import { planRoster, type KnownPerson, type PlannedLine } from '@/lib/interchange/roster-plan'
import { checkRosterNames } from '@/lib/schemas/roster'
import { Prisma } from '@/prisma/generated/client'
import type { Viewer } from '../auth/viewer'
import { db, isTaken, type Transaction } from '../db'
import { notFound, Refusal } from '../refusal'
import { classScope, coordinatedScope } from './scope'

/** A dry run: what every line would do. `shown` marks it, so that a commit can tell whether it still is what was shown. */
export type RosterPlan = { readonly lines: readonly PlannedLine[]; readonly ignoredColumns: readonly string[]; readonly shown: string }

/** `imported` false: the people changed since the dry run was shown; nothing was written, and here is the new one. */
export type RosterImport = { readonly imported: boolean; readonly plan: RosterPlan }

/** Rows a query carries at most: Postgres takes 65,535 values in one. */
const CHUNK = 1000
const IMPORT_PATIENCE_MS = 60_000

const chunks = <T>(rows: readonly T[]): T[][] => Array.from({ length: Math.ceil(rows.length / CHUNK) }, (_, index) => rows.slice(index * CHUNK, (index + 1) * CHUNK))

/** What a roster would do to a class of the coordinator's; writes nothing. @throws Refusal INVALID when the file cannot be read, NOT_FOUND */
export async function dryRunRoster(viewer: Viewer, input: { classId: string; text: string }): Promise<RosterPlan> {
  return db().$transaction((tx) => planNow(tx, viewer, input))
}

/**
 * Brings a roster into a class: all of it or nothing, in one transaction, and only if it does what the dry run showed.
 *
 * New accounts have no password: hashing thousands at once would hold the server for minutes, and a first password is better made
 * when it is handed over. The instructor makes it on the student's page.
 *
 * @throws Refusal INVALID, NOT_FOUND, and CONFLICT when somebody changes the same people at the same moment
 */
export async function importRoster(viewer: Viewer, input: { classId: string; text: string; shown: string }): Promise<RosterImport> {
  try {
    return await db().$transaction(async (tx) => {
      const plan = await planNow(tx, viewer, input)
      if (plan.shown !== input.shown) return { imported: false, plan }
      await carryOut(tx, viewer, input.classId, plan.lines)
      return { imported: true, plan }
    }, { isolationLevel: Prisma.TransactionIsolationLevel.RepeatableRead, timeout: IMPORT_PATIENCE_MS })
  } catch (error) {
    // A name taken, or a row changed, between our reading and our writing: the database undid all of it.
    if (isTaken(error) || (error instanceof Prisma.PrismaClientKnownRequestError && error.code === 'P2034')) {
      throw new Refusal('CONFLICT', 'Somebody changed the same people at this moment. Nothing was imported; check the file again.')
    }
    throw error
  }
}

async function planNow(tx: Transaction, viewer: Viewer, { classId, text }: { classId: string; text: string }): Promise<RosterPlan> {
  const { programId } = viewer
  // The coordinator's own scope first: an instructor sees the class, but does not make accounts.
  const program = await tx.program.findFirst({ where: coordinatedScope(viewer), select: { id: true } })
  const found = program && (await tx.class.findFirst({ where: { AND: [{ id: classId, archivedAt: null }, classScope(viewer)] }, select: { id: true } }))
  if (!found) throw notFound()
  const file = readFile(text)
  const names = file.lines.flatMap((line) => ('student' in line ? [line.student.signInName] : []))
  const known = new Map<string, KnownPerson>()
  for (const some of chunks(names)) {
    const rows = await tx.person.findMany({
      where: { programId, signInName: { in: some } },
      select: {
        id: true, signInName: true, givenName: true, familyName: true, disabledAt: true,
        memberships: { select: { role: true } }, enrolments: { where: { classId: found.id }, select: { booth: true, withdrawnAt: true } },
      },
    })
    for (const { signInName, memberships, enrolments: [enrolment], disabledAt, ...row } of rows) {
      known.set(signInName, {
        ...row, disabled: disabledAt !== null, staff: memberships.some(({ role }) => role !== 'student'),
        enrolment: enrolment ? { booth: enrolment.booth, withdrawn: enrolment.withdrawnAt !== null } : null,
      })
    }
  }
  const lines = planRoster(file.lines, known)
  return { lines, ignoredColumns: file.ignoredColumns, shown: createHash('sha256').update(JSON.stringify([found.id, lines])).digest('hex') }
}

function readFile(text: string) {
  try {
    return readRoster(text, checkRosterNames)
  } catch (error) {
    if (error instanceof RangeError) throw new Refusal('INVALID', error.message, { text: error.message })
    throw error
  }
}

async function carryOut(tx: Transaction, viewer: Viewer, classId: string, lines: readonly PlannedLine[]): Promise<void> {
  const { programId, personId: actorId } = viewer
  const { units } = await tx.program.findUniqueOrThrow({ where: { id: programId }, select: { units: true } })
  const added = lines.filter((line) => line.outcome === 'added')
  const changed = lines.filter((line) => line.outcome === 'changed')
  const idOf = new Map<string, string>()

  for (const some of chunks(added.filter((line) => line.personId === null))) {
    const rows = await tx.person.createManyAndReturn({
      data: some.map(({ student: { signInName, givenName, familyName } }) => ({ programId, signInName, givenName, familyName, units })),
      select: { id: true, signInName: true },
    })
    for (const row of rows) idOf.set(row.signInName, row.id)
    await tx.membership.createMany({ data: rows.map(({ id }) => ({ programId, personId: id, role: 'student' as const })) })
  }
  for (const line of [...added, ...changed]) if (line.personId) idOf.set(line.student.signInName, line.personId)
  const personOf = (signInName: string): string => {
    const id = idOf.get(signInName)
    if (id === undefined) throw new Error('A line of the roster has lost its person.')
    return id
  }
  for (const some of chunks(added)) {
    await tx.enrolment.createMany({ data: some.map(({ student }) => ({ programId, classId, personId: personOf(student.signInName), booth: student.booth })) })
  }
  const standing = [...changed, ...added.filter((line) => line.personId !== null)]
  for (const some of chunks(standing)) {
    const rows = JSON.stringify(some.map(({ student }) => ({ id: personOf(student.signInName), given: student.givenName, family: student.familyName, booth: student.booth })))
    await tx.$executeRaw`
      update "Person" p set "givenName" = r.given, "familyName" = r.family
      from jsonb_to_recordset(${rows}::jsonb) as r(id uuid, given text, family text, booth int)
      where p."programId" = ${programId}::uuid and p.id = r.id`
    await tx.$executeRaw`
      update "Enrolment" e set booth = coalesce(r.booth, e.booth), "withdrawnAt" = null
      from jsonb_to_recordset(${rows}::jsonb) as r(id uuid, given text, family text, booth int)
      where e."programId" = ${programId}::uuid and e."classId" = ${classId}::uuid and e."personId" = r.id`
  }
  const audit = [...added, ...changed].map(({ outcome, student, reason }) => ({
    programId, actorId, action: `roster.${outcome}`, subjectType: 'person', subjectId: personOf(student.signInName), after: { classId, what: reason },
  }))
  for (const some of chunks(audit)) await tx.auditEvent.createMany({ data: some })
}

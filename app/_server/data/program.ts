import 'server-only'
import { allCriteria } from '@/lib/criteria/catalogue'
import type { Prisma } from '@/prisma/generated/client'
import { hashPassword } from '../auth/passwords'
import type { Viewer } from '../auth/viewer'
import { db, type Transaction } from '../db'
import { notFound, Refusal } from '../refusal'
import { recordAudit } from './audit'
import { coordinatedScope } from './scope'
import { holdSkill, refreshSkill } from './skills'

export type ProgramRecord = {
  readonly id: string
  readonly name: string
  readonly slug: string
  readonly timeZone: string
  readonly units: 'us' | 'si'
  readonly readinessThreshold: number
  readonly minimumCoupons: number
  readonly staleAfterDays: number
}

const select = {
  id: true, name: true, slug: true, timeZone: true, units: true, readinessThreshold: true, minimumCoupons: true, staleAfterDays: true,
} as const

/** The viewer's program. */
export async function findProgram(viewer: Viewer): Promise<ProgramRecord> {
  return db().program.findUniqueOrThrow({ where: { id: viewer.programId }, select })
}

/** When a test is suggested: the chance it takes, the coupons an estimate takes, and the days after which it is stale. */
export type ReadinessSettings = Pick<ProgramRecord, 'readinessThreshold' | 'minimumCoupons' | 'staleAfterDays'>

/** Sets when a test is suggested. Standings already worked out follow with refreshStandings. @throws Refusal NOT_FOUND for anyone but the coordinator */
export async function setReadinessRule(viewer: Viewer, settings: ReadinessSettings): Promise<void> {
  await db().$transaction(async (tx) => {
    const before = await tx.program.findFirst({
      where: coordinatedScope(viewer), select: { readinessThreshold: true, minimumCoupons: true, staleAfterDays: true },
    })
    if (!before) throw notFound()
    const { readinessThreshold, minimumCoupons, staleAfterDays } = settings
    const after = { readinessThreshold, minimumCoupons, staleAfterDays }
    await tx.program.update({ where: { id: viewer.programId }, data: after })
    await recordAudit(tx, viewer, { action: 'program.readiness', subject: { type: 'program', id: viewer.programId }, before, after })
  })
}

/**
 * Works out again, under the program's present rule, the standings of everyone in a class that is not archived: those are what boards show.
 * One at a time, so that a class at work never waits long.
 *
 * @returns how many there were
 * @throws Refusal NOT_FOUND for anyone but the coordinator
 */
export async function refreshStandings(viewer: Viewer): Promise<number> {
  const program = await db().program.findFirst({ where: coordinatedScope(viewer), select: { id: true } })
  if (!program) throw notFound()
  const keys = await db().skillSummary.findMany({
    where: { programId: program.id, student: { enrolments: { some: { programId: program.id, withdrawnAt: null, class: { archivedAt: null } } } } },
    select: { programId: true, studentId: true, exerciseId: true },
  })
  for (const key of keys) {
    await db().$transaction(async (tx) => {
      await holdSkill(tx, key)
      await refreshSkill(tx, key)
    })
  }
  return keys.length
}

/** Whether anything has been set up in this database yet. */
export async function anyProgram(): Promise<boolean> {
  return (await db().program.findFirst({ select: { id: true } })) !== null
}

const slugOf = (name: string): string => name.normalize('NFKD').toLowerCase().replace(/[^a-z0-9]+/g, '-').replace(/^-|-$/g, '').slice(0, 40) || 'program'

/** Copies the shipped criteria sets into a program, so that its scorecards cite rows of its own. */
export async function copyCriteria(tx: Transaction, programId: string): Promise<void> {
  await tx.criteriaSet.createMany({ data: shippedCriteria(programId) })
}

/** The shipped criteria sets as rows of a program. */
const shippedCriteria = (programId: string): Prisma.CriteriaSetCreateManyInput[] =>
  allCriteria().map((set) => ({ programId, id: set.id, version: set.version, title: set.title, document: set as unknown as Prisma.InputJsonObject }))

/** Programs read at a time when the server starts. */
const PROGRAMS_AT_ONCE = 200

/**
 * Gives every program the versions of the shipped criteria that it does not have yet: a release may bring new ones. Sets that are
 * there stay as they are, and exercises keep the version they were made with.
 *
 * @returns how many rows were added
 */
export async function addShippedCriteria(): Promise<number> {
  let added = 0
  for (let after: string | null = null; ;) {
    const programs: { id: string }[] = await db().program.findMany({
      orderBy: { id: 'asc' }, take: PROGRAMS_AT_ONCE, select: { id: true }, where: after === null ? {} : { id: { gt: after } },
    })
    const last = programs.at(-1)
    if (!last) return added
    const { count } = await db().criteriaSet.createMany({
      data: programs.flatMap(({ id }) => shippedCriteria(id)),
      skipDuplicates: true,
    })
    added += count
    after = last.id
  }
}

type Setup = {
  programName: string; timeZone: string; units: 'us' | 'si'
  givenName: string; familyName: string; signInName: string; password: string
}

/** First visit: makes the program, its criteria sets and its coordinator. @throws Refusal CONFLICT when a program is already there */
export async function setUpProgram(input: Setup): Promise<{ programId: string; personId: string }> {
  const passwordHash = await hashPassword(input.password)
  return db().$transaction(async (tx) => {
    // One first visit at a time: the lock makes a second submission see the first one's program.
    await tx.$executeRaw`LOCK TABLE "Program" IN EXCLUSIVE MODE`
    if (await tx.program.findFirst({ select: { id: true } })) throw new Refusal('CONFLICT', 'A program has already been set up here. Sign in instead.')
    const program = await tx.program.create({
      data: { name: input.programName, slug: slugOf(input.programName), timeZone: input.timeZone, units: input.units },
      select: { id: true },
    })
    await copyCriteria(tx, program.id)
    const person = await tx.person.create({
      data: {
        programId: program.id, signInName: input.signInName, givenName: input.givenName, familyName: input.familyName,
        passwordHash, units: input.units, memberships: { create: { role: 'coordinator' } },
      },
      select: { id: true },
    })
    await recordAudit(tx, { programId: program.id, personId: person.id }, { action: 'program.setup', subject: { type: 'program', id: program.id } })
    return { programId: program.id, personId: person.id }
  })
}

import 'server-only'
import { allCriteria } from '@/lib/criteria/catalogue'
import type { Prisma } from '@/prisma/generated/client'
import { hashPassword } from '../auth/passwords'
import type { Viewer } from '../auth/viewer'
import { db, type Transaction } from '../db'
import { Refusal } from '../refusal'
import { recordAudit } from './audit'

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

/** Whether anything has been set up in this database yet. */
export async function anyProgram(): Promise<boolean> {
  return (await db().program.findFirst({ select: { id: true } })) !== null
}

const slugOf = (name: string): string => name.normalize('NFKD').toLowerCase().replace(/[^a-z0-9]+/g, '-').replace(/^-|-$/g, '').slice(0, 40) || 'program'

/** Copies the shipped criteria sets into a program, so that its scorecards cite rows of its own. */
export async function copyCriteria(tx: Transaction, programId: string): Promise<void> {
  await tx.criteriaSet.createMany({
    data: allCriteria().map((set) => ({
      programId, id: set.id, version: set.version, title: set.title, document: set as unknown as Prisma.InputJsonObject,
    })),
  })
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

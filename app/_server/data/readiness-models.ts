import 'server-only'
import { MODEL_VERSION } from '@/lib/readiness/parameters'
import { LEAST_SERIES } from '@/lib/readiness/refit'
import { fullName } from '@/lib/reports/full-name'
import type { Prisma } from '@/prisma/generated/client'
import type { Viewer } from '../auth/viewer'
import { db } from '../db'
import { notFound, Refusal } from '../refusal'
import { recordAudit } from './audit'
import { modelInUse } from './model-in-use'
import { coordinatedScope } from './scope'
import { renewStandings } from './skills'

/** A series too short says little about how skill moves: this many coupons judged by an instructor, at least. This project's choice. */
export const LEAST_COUPONS = 8
/** Proposals a coordinator is shown: the latest. */
const MOST_SHOWN = 5
/** Worked out again at once when a model is adopted, the latest practised first; the others when they are next read or written. */
const RENEWED_AT_ONCE = { count: 500, ms: 10_000 }

const proposalSelect = {
  version: true, held: true, series: true, coupons: true, inUse: true, lossBefore: true, lossAfter: true, standings: true, moved: true,
  proposedAt: true, adoptedAt: true,
} as const

export type ModelProposal = Prisma.ReadinessModelGetPayload<{ select: typeof proposalSelect }>

export type ModelsRecord = {
  readonly inUse: { readonly version: string; readonly since: Date | null; readonly shipped: boolean; readonly adoptedBy: string | null }
  /** Latest first, of the present filter only. */
  readonly proposals: readonly ModelProposal[]
  /** Series there are now, and how many a refit takes. */
  readonly series: { readonly have: number; readonly need: number }
}

/** The program's model and what was proposed instead. @throws Refusal NOT_FOUND for anyone but the coordinator */
export async function findModels(viewer: Viewer): Promise<ModelsRecord> {
  const program = await db().program.findFirst({ where: coordinatedScope(viewer), select: { id: true } })
  if (!program) throw notFound()
  const programId = program.id
  const { version, since } = await modelInUse(programId)
  const [adopted, proposals, have] = await Promise.all([
    db().readinessModel.findUnique({ where: { programId_version: { programId, version } }, select: { adoptedBy: { select: { givenName: true, familyName: true } } } }),
    db().readinessModel.findMany({ where: { programId, filterVersion: MODEL_VERSION }, orderBy: { proposedAt: 'desc' }, take: MOST_SHOWN, select: proposalSelect }),
    db().skillSummary.count({ where: { programId, inspectedCount: { gte: LEAST_COUPONS } } }),
  ])
  const by = adopted?.adoptedBy
  return {
    inUse: { version, since, shipped: version === MODEL_VERSION, adoptedBy: by ? fullName(by) : null },
    proposals, series: { have, need: LEAST_SERIES },
  }
}

/**
 * Takes a proposed model into use, or goes back to the shipped one, whose version is named then. Standings follow: those of another
 * model than the one in use are never shown, and are worked out again by `renewProgram`, at the next write, or when next read.
 *
 * @throws Refusal NOT_FOUND for anyone but the coordinator and for an unknown version, CONFLICT when it is in use already
 */
export async function adoptModel(viewer: Viewer, { version }: { readonly version: string }): Promise<void> {
  await db().$transaction(async (tx) => {
    const program = await tx.program.findFirst({ where: coordinatedScope(viewer), select: { id: true } })
    if (!program) throw notFound()
    const programId = program.id
    // One adoption at a time: the second sees the first.
    await tx.$queryRaw`SELECT 1 FROM "Program" WHERE "id" = ${programId}::uuid FOR UPDATE`
    const before = await modelInUse(programId, tx)
    if (before.version === version) throw new Refusal('CONFLICT', 'This model is in use already. Reload the page to see how things stand.')
    if (version === MODEL_VERSION) {
      await tx.readinessModel.updateMany({ where: { programId, adoptedAt: { not: null } }, data: { adoptedAt: null, adoptedById: null } })
    } else {
      const { count } = await tx.readinessModel.updateMany({
        where: { programId, version, filterVersion: MODEL_VERSION }, data: { adoptedAt: new Date(), adoptedById: viewer.personId },
      })
      if (count === 0) throw notFound()
    }
    await recordAudit(tx, viewer, {
      action: 'readiness-model.adopt', subject: { type: 'program', id: programId }, before: { version: before.version }, after: { version },
    })
  })
}

/**
 * Works out again the standings practised latest, if they are of another model than the one in use.
 *
 * @returns how many there were
 * @throws Refusal NOT_FOUND for anyone but the coordinator
 */
export async function renewProgram(viewer: Viewer): Promise<number> {
  const program = await db().program.findFirst({ where: coordinatedScope(viewer), select: { id: true } })
  if (!program) throw notFound()
  return renewStandings(program.id, {}, RENEWED_AT_ONCE)
}

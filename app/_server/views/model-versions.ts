import 'server-only'
import { readinessModels } from '@/lib/language/readiness-models'
import { say } from '@/lib/language/say'
import { MODEL_VERSION } from '@/lib/readiness/parameters'
import { dateText } from '@/lib/reports/dates'
import { countText } from '@/lib/reports/share-text'
import type { Viewer } from '../auth/viewer'
import { findProgram } from '../data/program'
import { findModels, type ModelProposal } from '../data/readiness-models'

export type ProposalView = { readonly version: string; readonly head: string; readonly facts: readonly string[]; readonly inUse: boolean }

export type ModelVersionsView = {
  /** Which model is in use, since when and by whose decision. */
  readonly inUse: string
  /** What a refit is, and how far the program is from one. */
  readonly what: string
  /** Latest first. */
  readonly proposals: readonly ProposalView[]
  /** The shipped model, when another one is in use. */
  readonly shipped: string | null
}

/** The readiness model in use and what was proposed instead. @throws Refusal NOT_FOUND for anyone but the coordinator */
export async function modelVersions(viewer: Viewer): Promise<ModelVersionsView> {
  const [{ inUse, proposals, series }, { timeZone }] = await Promise.all([findModels(viewer), findProgram(viewer)])
  const { locale } = viewer
  const { version, since, shipped, adoptedBy } = inUse
  const date = since && dateText(since, locale, timeZone)
  return {
    inUse: date === null ? say(readinessModels, locale, 'inUseShipped', { version })
      : say(readinessModels, locale, adoptedBy ? 'inUseSince' : 'inUseSinceNobody', { version, date, name: adoptedBy ?? '' }),
    what: say(readinessModels, locale, 'what', { have: countText(series.have, locale), need: series.need }),
    proposals: proposals.map((each) => ({
      version: each.version, head: say(readinessModels, locale, 'of', { version: each.version, date: dateText(each.proposedAt, locale, timeZone) }),
      facts: factsOf(each, viewer), inUse: each.version === version,
    })),
    shipped: shipped ? null : MODEL_VERSION,
  }
}

function factsOf({ held, series, coupons, lossBefore, lossAfter, inUse, standings, moved }: ModelProposal, { locale }: Viewer): string[] {
  return [
    say(readinessModels, locale, held ? 'heldBack' : 'fitted', { series: countText(series, locale), coupons: countText(coupons, locale) }),
    say(readinessModels, locale, 'loss', { before: lossBefore.toFixed(3), after: lossAfter.toFixed(3), inUse }),
    say(readinessModels, locale, 'moved', { moved: countText(moved, locale), standings: countText(standings, locale) }),
  ]
}

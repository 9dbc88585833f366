import 'server-only'
import { isOwn } from '@/lib/criteria/draft/own-id'
import { dateText, momentText } from '@/lib/reports/dates'
import type { Viewer } from '../auth/viewer'
import { listCriteria, type CriteriaLine } from '../data/criteria'
import { listDrafts } from '../data/criteria-drafts'
import { findProgram } from '../data/program'

export type CriteriaSetLine = {
  readonly id: string
  readonly title: string
  readonly own: boolean
  /** Newest first. */
  readonly versions: readonly { readonly version: number; readonly from: string; readonly exercises: number; readonly retired: boolean }[]
  /** Exercises judged by any of its versions. */
  readonly exercises: number
}

export type CriteriaListView = {
  readonly sets: readonly CriteriaSetLine[]
  /** `criteriaId` of a published set: the draft is its next version. */
  readonly drafts: readonly { readonly id: string; readonly title: string; readonly saved: string; readonly nextOf: string | null }[]
}

/** Every set the program can judge by or has judged by, its own first, and for coordinators what is being written. */
export async function criteriaList(viewer: Viewer): Promise<CriteriaListView> {
  const [lines, drafts, program] = await Promise.all([listCriteria(viewer), listDrafts(viewer), findProgram(viewer)])
  const byId = new Map<string, CriteriaLine[]>()
  for (const line of lines) byId.set(line.id, [...(byId.get(line.id) ?? []), line])
  const sets = [...byId.values()].flatMap((found): CriteriaSetLine[] => {
    const versions = found.toSorted((a, b) => b.version - a.version)
    const newest = versions[0]
    if (!newest) return []
    return [{
      id: newest.id, title: newest.title, own: isOwn(newest.id), exercises: versions.reduce((sum, { exercises }) => sum + exercises, 0),
      versions: versions.map(({ version, createdAt, exercises, retired }) => ({ version, exercises, retired, from: dateText(createdAt, 'en', program.timeZone) })),
    }]
  })
  return {
    sets: sets.sort((a, b) => Number(b.own) - Number(a.own) || a.title.localeCompare(b.title, 'en')),
    drafts: drafts.map(({ id, criteriaId, title, updatedAt, updatedBy }) => ({
      id, title: title.trim() || 'Without a title', saved: `Saved by ${updatedBy}, ${momentText(updatedAt, 'en', program.timeZone)}`, nextOf: byId.get(criteriaId)?.[0]?.title ?? null,
    })),
  }
}

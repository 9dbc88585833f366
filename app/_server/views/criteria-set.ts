import 'server-only'
import { isOwn } from '@/lib/criteria/draft/own-id'
import type { CriteriaSet } from '@/lib/criteria/types'
import { criteriaChanges, type RuleChange } from '@/lib/reports/criteria-changes'
import { criteriaInWords, type CriteriaInWords } from '@/lib/reports/criteria-words'
import type { Viewer } from '../auth/viewer'
import { findCriteria, listCriteria } from '../data/criteria'

export type CriteriaSetView = {
  readonly id: string
  readonly version: number
  readonly newest: number
  readonly own: boolean
  /** No longer offered to exercises. */
  readonly retired: boolean
  readonly words: CriteriaInWords
  /** Exercises judged by this version now. */
  readonly exercises: number
  /** What a set of the program's own was begun from: the title and version; null for sets that ship and those begun with nothing. */
  readonly from: { readonly title: string; readonly version: number } | null
  /** What differs from what it was begun from; for an own set's next version, from the version before. */
  readonly changes: readonly RuleChange[]
}

/** One version of a set in words; null when the program has none such or the viewer is not of its staff. */
export async function criteriaSetView(viewer: Viewer, id: string, version: number): Promise<CriteriaSetView | null> {
  const [set, lines] = await Promise.all([findCriteria(viewer, id, version), listCriteria(viewer)])
  if (!set) return null
  const versions = lines.filter((line) => line.id === id)
  const line = versions.find((each) => each.version === version)
  const base = await baseOf(viewer, set)
  return {
    id, version, own: isOwn(id), words: criteriaInWords(set),
    newest: Math.max(...versions.map((each) => each.version)), exercises: line?.exercises ?? 0, retired: line?.retired ?? false,
    from: base && { title: base.title, version: base.version }, changes: base ? criteriaChanges(base, set) : [],
  }
}

async function baseOf(viewer: Viewer, set: CriteriaSet): Promise<CriteriaSet | null> {
  const { 'copied-from': id, 'copied-version': version } = set.settings ?? {}
  return isOwn(set.id) && typeof id === 'string' && typeof version === 'number' ? findCriteria(viewer, id, version) : null
}

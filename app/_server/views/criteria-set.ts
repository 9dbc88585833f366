import 'server-only'
import { isOwn } from '@/lib/criteria/draft/own-id'
import { criteriaInWords, type CriteriaInWords } from '@/lib/reports/criteria-words'
import type { Viewer } from '../auth/viewer'
import { findCriteria, listCriteria } from '../data/criteria'

export type CriteriaSetView = {
  readonly id: string
  readonly version: number
  readonly newest: number
  readonly own: boolean
  readonly words: CriteriaInWords
  /** Exercises judged by this version now. */
  readonly exercises: number
}

/** One version of a set in words; null when the program has none such or the viewer is not of its staff. */
export async function criteriaSetView(viewer: Viewer, id: string, version: number): Promise<CriteriaSetView | null> {
  const [set, lines] = await Promise.all([findCriteria(viewer, id, version), listCriteria(viewer)])
  if (!set) return null
  const versions = lines.filter((line) => line.id === id)
  return {
    id, version, own: isOwn(id), words: criteriaInWords(set),
    newest: Math.max(...versions.map((line) => line.version)), exercises: versions.find((line) => line.version === version)?.exercises ?? 0,
  }
}

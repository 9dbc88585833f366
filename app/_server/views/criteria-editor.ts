import 'server-only'
import type { DraftCriteria } from '@/lib/criteria/draft/draft'
import { SAMPLE_COUPONS } from '@/lib/criteria/draft/sample-coupons'
import { momentText } from '@/lib/reports/dates'
import type { Viewer } from '../auth/viewer'
import { listProgramExercises } from '../data/course'
import { listCriteria } from '../data/criteria'
import { findDraft } from '../data/criteria-drafts'
import { findProgram } from '../data/program'
import { criteriaPreview, type CriteriaPreview } from './criteria-preview'

export type Chosen = { readonly value: string; readonly label: string }

export type CriteriaEditorView = {
  readonly draftId: string
  readonly eyebrow: string
  readonly title: string
  readonly lead: string
  readonly seen: string
  readonly document: DraftCriteria
  readonly preview: CriteriaPreview
  readonly samples: readonly Chosen[]
  /** Whose coupons can be judged again: those of the set it came from first, where exercises use it. */
  readonly coupons: readonly Chosen[]
}

/** A draft with all its form needs; null when it is gone or not the viewer's. */
export async function criteriaEditor(viewer: Viewer, draftId: string): Promise<CriteriaEditorView | null> {
  const draft = await findDraft(viewer, draftId)
  if (!draft) return null
  const [sets, exercises, program] = await Promise.all([listCriteria(viewer), listProgramExercises(viewer), findProgram(viewer)])
  const { document, criteriaId } = draft
  const newest = sets.filter(({ id }) => id === criteriaId).reduce((most, { version }) => Math.max(most, version), 0)
  const bases = [criteriaId, document.base?.id].filter((id, index, all) => id !== undefined && all.indexOf(id) === index)
  const used = bases.flatMap((id) => {
    const versions = sets.filter((set) => set.id === id)
    const title = versions[0]?.title
    return id !== undefined && title !== undefined && versions.some((version) => version.exercises > 0) ? [{ value: `set ${id}`, label: `Exercises judged by ${title}` }] : []
  })
  return {
    draftId, document, seen: draft.updatedAt.toISOString(), title: draft.title.trim() || 'Without a title',
    eyebrow: newest === 0 ? 'A new set' : `Will be version ${newest + 1}`,
    lead: `Nobody is judged by it until it is published and an exercise is set to it. Saved by ${draft.updatedBy}, ${momentText(draft.updatedAt, 'en', program.timeZone)}.`,
    preview: criteriaPreview(document, SAMPLE_COUPONS[0]?.id ?? ''),
    samples: SAMPLE_COUPONS.map(({ id, title }) => ({ value: id, label: title })),
    coupons: [...used, ...exercises.map(({ id, title }) => ({ value: `exercise ${id}`, label: title }))],
  }
}

import 'server-only'
import { printedText } from '@/lib/reports/dates'
import type { Paper } from '@/lib/reports/paper'
import type { Viewer } from '../auth/viewer'
import { findStaffClass, listClassStudents } from '../data/classes'
import { findProgram } from '../data/program'
import { progressSummary, type ProgressSummary } from './progress-summary'

export type ClassProgress = {
  readonly title: string
  /** A summary for each active student, by booth, then name. */
  readonly summaries: readonly { readonly studentId: string; readonly summary: ProgressSummary }[]
  readonly printedAt: string
}

/** The progress summaries of a whole class in one document; null when the viewer does not keep it. */
export async function classProgress(viewer: Viewer, classId: string, paper: Paper, asOf: Date): Promise<ClassProgress | null> {
  const kept = await findStaffClass(viewer, classId)
  if (!kept) return null
  const [students, program] = await Promise.all([listClassStudents(viewer, classId), findProgram(viewer)])
  const summaries: { studentId: string; summary: ProgressSummary }[] = []
  // One after the other: a class at once would take every line to the database.
  for (const { id } of students) {
    const summary = await progressSummary(viewer, id, { paper }, asOf)
    if (summary) summaries.push({ studentId: id, summary })
  }
  return { title: kept.name, summaries, printedAt: printedText(asOf, viewer.locale, program.timeZone) }
}

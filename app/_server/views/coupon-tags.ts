import 'server-only'
import { printedText } from '@/lib/reports/dates'
import { fullName } from '@/lib/reports/full-name'
import { inPages } from '@/lib/reports/in-pages'
import { drawQr, type QrDrawing } from '@/lib/reports/qr-drawing'
import type { Viewer } from '../auth/viewer'
import { findStaffClass, listClassStudents } from '../data/classes'
import { listClassExercises } from '../data/exercises'
import { findProgram } from '../data/program'
import { env } from '../env'

/** Two columns of five: what either sheet has room for. */
export const TAGS_A_PAGE = 10

export type CouponTag = { readonly key: string; readonly name: string; readonly booth: number | null }
export type CouponTags = {
  readonly className: string
  readonly title: string
  /** Where the symbol leads: the log of this exercise in this class, for whoever is signed in. */
  readonly address: string
  readonly qr: QrDrawing
  readonly pages: readonly (readonly CouponTag[])[]
  readonly printedAt: string
}

/** A tag for each active student of a class in one exercise; null when the viewer does not keep the class or the exercise is not of it. */
export async function couponTags(viewer: Viewer, classId: string, exerciseId: string, asOf: Date): Promise<CouponTags | null> {
  const kept = await findStaffClass(viewer, classId)
  if (!kept) return null
  const [students, exercises, program] = await Promise.all([listClassStudents(viewer, classId), listClassExercises(viewer, classId), findProgram(viewer)])
  const exercise = exercises.find((each) => each.exercise.id === exerciseId)?.exercise
  if (!exercise) return null
  const address = new URL(`/learn/${classId}/${exerciseId}/log`, env().NEXTAUTH_URL).href
  return {
    className: kept.name, title: exercise.title, address, qr: drawQr(address),
    pages: inPages(students.map((student) => ({ key: student.id, name: fullName(student), booth: student.booth })), TAGS_A_PAGE),
    printedAt: printedText(asOf, viewer.locale, program.timeZone),
  }
}

import 'server-only'
import { readingsWords } from '@/lib/language/readings'
import { say } from '@/lib/language/say'
import { momentText } from '@/lib/reports/dates'
import type { GridFrame } from '@/lib/schemas/grid-row'
import type { Viewer } from '../auth/viewer'
import { findTaughtClass, type ClassRecord } from '../data/classes'
import { listBlindWaiting } from '../data/blind-coupons'
import { findExercise } from '../data/exercises'
import { findProgram } from '../data/program'
import { listQueue, printOfQueue } from '../data/queue'
import { listSnippets, type SnippetRecord } from '../data/snippets'
import { readingsSetup } from './log-view'

/** One coupon that waits, with nothing of what the student read. */
export type GridCoupon = {
  readonly id: string
  readonly name: string
  readonly number: number
  readonly booth: number | null
  /** The revision its look will have. */
  readonly revision: number
  /** Who else has it open. */
  readonly takenBy: string | null
}

/** Coupons of one version of the exercise: they share their stations and what is measured at them. */
export type GridGroup = GridFrame & {
  readonly version: number
  /** Names of the boxes, in the columns' order. */
  readonly heads: readonly string[]
  readonly coupons: readonly GridCoupon[]
}

export type GradingGrid = {
  readonly classRecord: ClassRecord
  readonly title: string
  /** Latest version first; none when nothing waits. */
  readonly groups: readonly GridGroup[]
  readonly snippets: readonly SnippetRecord[]
  /** The page's own address. */
  readonly address: string
  /** The print of what waits in the class, for hearing of changes. */
  readonly state: string
  /** When this was read, in words. */
  readonly asOf: string
}

/** Every coupon of one exercise that waits in a class, for grading by keyboard; null when the class is not the viewer's to grade. */
export async function gradingGrid(viewer: Viewer, key: { readonly classId: string; readonly exerciseId: string }, asOf: Date): Promise<GradingGrid | null> {
  const [classRecord, exercise] = await Promise.all([findTaughtClass(viewer, key.classId), findExercise(viewer, key.exerciseId)])
  if (!classRecord || !exercise) return null
  // Read before the rest, so that what the page shows is never older than what it says it has seen.
  const state = printOfQueue(await listQueue(viewer, key.classId))
  const [waiting, snippets, { timeZone }] = await Promise.all([listBlindWaiting(viewer, key), listSnippets(viewer), findProgram(viewer)])
  const versions = [...new Set(waiting.map((coupon) => coupon.exercise.version))].sort((a, b) => b - a)
  const groups = await Promise.all(versions.map(async (version): Promise<GridGroup> => {
    const coupons = waiting.filter((coupon) => coupon.exercise.version === version)
    const { boxes, vertical, blank } = await readingsSetup(viewer, coupons[0]!.exercise)
    return {
      version, boxes, units: viewer.units,
      places: blank.stations.map(({ at }) => at),
      heads: boxes.map((box) => say(readingsWords, 'en', vertical && (box === 'legA' || box === 'legB') ? (`${box}Vertical` as const) : box)),
      coupons: coupons.map(({ id, student, number, booth, nextRevision, takenBy }) => ({
        id, name: student.name, number, booth, revision: nextRevision, takenBy: takenBy && !takenBy.self ? takenBy.name : null,
      })),
    }
  }))
  const address = `/teach/classes/${key.classId}/grid/${key.exerciseId}`
  return { classRecord, title: exercise.title, groups, snippets, address, state, asOf: momentText(asOf, viewer.locale, timeZone) }
}

import 'server-only'
import { nextTurn, type Turn } from '@/lib/reports/gauge-study-order'
import type { StudyReadingForm } from '@/lib/schemas/gauge-study'
import type { Viewer } from '../auth/viewer'
import { db, isTaken } from '../db'
import { notFound, Refusal } from '../refusal'
import { recordAudit } from './audit'
import { holdStudy } from './gauge-studies'
import { taughtClassScope } from './scope'

/** Two widths closer than this are one width, typed twice. */
const SAME_MM = 1e-6

/** What a reader reads next, null when there is nothing more, and how many of their readings are in. */
export type OwnProgress = { readonly next: Turn | null; readonly done: number }

/**
 * Takes the viewer's next reading of a study. Sent again it is the same reading; a width, once read, stays.
 *
 * @throws Refusal NOT_FOUND for a study of a class the viewer does not teach, CONFLICT for a turn that is not next, a width that was read
 *   otherwise, and a study that is closed or whose class is archived
 */
export async function addReading(viewer: Viewer, input: StudyReadingForm): Promise<OwnProgress> {
  try {
    return await writeReading(viewer, input)
  } catch (error) {
    if (!isTaken(error)) throw error
    // Sent from two tabs at the same moment: the key let one through, and the other is measured against it.
    return writeReading(viewer, input)
  }
}

function writeReading(viewer: Viewer, { studyId, couponId, round, width: widthMm }: StudyReadingForm): Promise<OwnProgress> {
  const { programId, personId: readerId } = viewer
  return db().$transaction(async (tx) => {
    await holdStudy(tx, programId, studyId, 'share')
    const study = await tx.gaugeStudy.findFirst({
      where: { AND: [{ programId, id: studyId }, { class: taughtClassScope(viewer) }] },
      select: { id: true, rounds: true, closedAt: true, class: { select: { archivedAt: true } }, coupons: { orderBy: { sequence: 'asc' }, select: { couponId: true } } },
    })
    if (!study) throw notFound()
    const plan = { id: study.id, rounds: study.rounds, couponIds: study.coupons.map((each) => each.couponId) }
    if (!plan.couponIds.includes(couponId) || round > plan.rounds) throw notFound()
    const ended = study.closedAt !== null
    const done = await tx.studyReading.findMany({ where: { programId, studyId, readerId }, select: { couponId: true, round: true, widthMm: true } })
    const standing = done.find((each) => each.couponId === couponId && each.round === round)
    if (standing && Math.abs(standing.widthMm - widthMm) <= SAME_MM) return { next: ended ? null : nextTurn(plan, readerId, done), done: done.length }
    if (standing) throw new Refusal('CONFLICT', `You read this coupon in round ${round} before. That width stands; a reading is never changed.`)
    if (ended) throw new Refusal('CONFLICT', 'This study was closed meanwhile. Your reading was not taken.')
    if (study.class.archivedAt !== null) throw new Refusal('CONFLICT', 'The class is archived. Nothing more is read in it.')
    const next = nextTurn(plan, readerId, done)
    if (next?.couponId !== couponId || next.round !== round) throw new Refusal('CONFLICT', 'Another coupon comes first. Your reading was not taken.')
    await tx.studyReading.create({ data: { programId, studyId, couponId, readerId, round, widthMm } })
    await recordAudit(tx, viewer, { action: 'study.read', subject: { type: 'study', id: studyId }, after: { couponId, round, widthMm } })
    return { next: nextTurn(plan, readerId, [...done, { couponId, round }]), done: done.length + 1 }
  })
}

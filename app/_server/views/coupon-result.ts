import 'server-only'
import { whatToChange } from '@/lib/coaching/what-to-change'
import { scorecardWords } from '@/lib/language/scorecard'
import { say } from '@/lib/language/say'
import { explainAdvice, type AdviceText } from '@/lib/reports/explain-advice'
import { lookView, type LookView } from '@/lib/reports/look-view'
import { weldOfExercise } from '@/lib/scoring/weld-of-exercise'
import type { Viewer } from '../auth/viewer'
import { listComments, type CommentRecord } from '../data/comments'
import { findCoupon, type CouponRecord, type InspectionRecord } from '../data/coupon-record'
import { criteriaSet } from '../data/criteria'

export type CouponLook = LookView & {
  readonly id: string
  readonly kind: InspectionRecord['kind']
  readonly title: string
  readonly inspector: string
  readonly at: Date
  readonly revision: number
}

export type CouponResult = {
  readonly coupon: Omit<CouponRecord, 'inspections'>
  /** The look that counts: the instructor's once there is one. */
  readonly lead: CouponLook | null
  /** The other standing look, for the two side by side. */
  readonly other: CouponLook | null
  /** A second reading, for the staff; nobody else's record holds one. */
  readonly second: CouponLook | null
  /** Looks that were corrected, latest first. */
  readonly superseded: readonly CouponLook[]
  readonly advice: AdviceText | null
  readonly more: readonly AdviceText[]
  readonly comments: readonly CommentRecord[]
}

/** A coupon's result for whoever may see it: student, instructor, print. null when it is not the viewer's to see. */
export async function couponResult(viewer: Viewer, couponId: string): Promise<CouponResult | null> {
  const record = await findCoupon(viewer, couponId)
  if (!record) return null
  const { inspections, ...coupon } = record
  const looks = await Promise.all(inspections.map(async (inspection) => ({ inspection, look: await lookOf(viewer, record, inspection) })))
  const standing = looks.filter(({ inspection }) => !inspection.superseded)
  const lead = standing.find(({ look }) => look.kind === 'instructor') ?? standing.find(({ look }) => look.kind === 'self') ?? null
  const other = lead?.look.kind === 'instructor' ? (standing.find(({ look }) => look.kind === 'self')?.look ?? null) : null
  const advice = lead ? await adviceOf(viewer, record, lead.inspection) : []
  return {
    coupon,
    lead: lead?.look ?? null,
    other,
    second: standing.find(({ look }) => look.kind === 'second')?.look ?? null,
    superseded: looks.filter(({ inspection }) => inspection.superseded).map(({ look }) => look).reverse(),
    advice: advice[0] ?? null,
    more: advice.slice(1, 4),
    comments: await listComments(viewer, couponId),
  }
}

/** A look at a coupon as its reader is shown it. */
export async function lookOf(viewer: Viewer, record: CouponRecord, inspection: InspectionRecord): Promise<CouponLook> {
  const { exercise } = record
  const criteria = await criteriaSet(viewer.programId, inspection.scorecard.criteriaId, exercise.criteria.version)
  const own = record.student.id === viewer.personId
  const title = say(scorecardWords, viewer.locale, inspection.kind === 'self' && !own ? 'selfOther' : inspection.kind)
  const view = lookView({
    exercise, inspection: inspection.readings.inspection, scorecard: inspection.scorecard, override: inspection.override, criteria, reader: { units: viewer.units, locale: viewer.locale },
  })
  return { ...view, id: inspection.id, kind: inspection.kind, title, inspector: inspection.inspector, at: inspection.submittedAt, revision: inspection.revision }
}

async function adviceOf(viewer: Viewer, record: CouponRecord, inspection: InspectionRecord): Promise<AdviceText[]> {
  const { exercise } = record
  const criteria = await criteriaSet(viewer.programId, exercise.criteria.id, exercise.criteria.version)
  return whatToChange({
    weld: weldOfExercise(exercise), inspection: inspection.readings.inspection, scorecard: inspection.scorecard,
    passes: record.passes, boothCard: exercise.boothCard, criteria,
  }).map((each) => explainAdvice(each, { locale: viewer.locale, units: viewer.units, criteria }))
}

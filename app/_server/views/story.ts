import 'server-only'
import { gradingWords } from '@/lib/language/grading'
import { learn } from '@/lib/language/learn'
import { scorecardWords } from '@/lib/language/scorecard'
import { say } from '@/lib/language/say'
import { stripOf } from '@/lib/reports/look-view'
import type { BeadStripInput } from '@/lib/reports/bead-strip'
import type { CouponMark } from '@/lib/reports/marks-over-time'
import { standingVerdict } from '@/lib/scoring/override'
import type { Verdict } from '@/lib/scoring/types'
import type { Viewer } from '../auth/viewer'
import { criteriaSet } from '../data/criteria'
import { listStory, type StoryCoupon } from '../data/coupon-record'

export type StoryRow = {
  readonly key: string
  readonly label: string
  readonly strip: BeadStripInput
  readonly verdict: { readonly kind: Verdict; readonly word: string }
}
export type Story = {
  /** Coupon ids beside the rows, for those who may open them. */
  readonly rows: readonly (StoryRow & { readonly id: string })[]
  readonly marks: readonly CouponMark[]
  readonly coupons: readonly StoryCoupon[]
}

/** The story of one student in one exercise: strips oldest first, marks over time. `most` strips are the latest. */
export async function storyOf(viewer: Viewer, key: { studentId: string; exerciseId: string }, most: number): Promise<Story> {
  const coupons = await listStory(viewer, key, most)
  const rows = await Promise.all(coupons.map((coupon) => rowOf(viewer, coupon)))
  return { rows: rows.filter((row) => row !== null), marks: coupons.flatMap(markOf), coupons }
}

async function rowOf(viewer: Viewer, coupon: StoryCoupon): Promise<Story['rows'][number] | null> {
  if (!coupon.counts) return null
  const { readings, scorecard, override } = coupon.counts
  const verdict = standingVerdict(scorecard.verdict, override)
  const word = say(scorecardWords, viewer.locale, verdict)
  const criteria = await criteriaSet(viewer.programId, scorecard.criteriaId, coupon.exercise.criteria.version)
  return {
    id: coupon.id,
    key: coupon.id,
    label: say(learn, viewer.locale, 'number', { n: coupon.number }),
    strip: stripOf({ exercise: coupon.exercise, inspection: readings.inspection, scorecard, criteria, reader: { units: viewer.units, locale: viewer.locale } }),
    verdict: { kind: verdict, word: override ? `${word}, ${say(gradingWords, viewer.locale, 'short')}` : word },
  }
}

function markOf(coupon: StoryCoupon): CouponMark[] {
  const { counts, number } = coupon
  return counts ? [{ coupon: number, mark: counts.scorecard.mark, verdict: standingVerdict(counts.scorecard.verdict, counts.override) }] : []
}

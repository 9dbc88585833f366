import 'server-only'
import type { DraftCriteria } from '@/lib/criteria/draft/draft'
import { readDraft, type BoxProblems } from '@/lib/criteria/draft/from-draft'
import { scorecardWords } from '@/lib/language/scorecard'
import { say } from '@/lib/language/say'
import { dateText } from '@/lib/reports/dates'
import { ruleName } from '@/lib/reports/rule-names'
import { wayText, wouldChange, wouldChangeSentence } from '@/lib/reports/would-change'
import { scoreInspection } from '@/lib/scoring/score-inspection'
import { weldOfExercise } from '@/lib/scoring/weld-of-exercise'
import type { Verdict } from '@/lib/scoring/types'
import type { Viewer } from '../auth/viewer'
import { listJudgedCoupons, type CouponsOf } from '../data/judged-coupons'
import { findProgram } from '../data/program'

/** As many coupons as are judged again. */
const MOST = 80

export type ChangedCoupon = { readonly couponId: string; readonly name: string; readonly before: string; readonly after: string; readonly why: string }

export type CriteriaChange =
  | { readonly ok: false; readonly problems: BoxProblems }
  | {
    readonly ok: true
    /** 'With these limits, 12 of the last 80 coupons would change verdict.' */
    readonly sentence: string
    readonly ways: readonly string[]
    /** What a reader should know beside the count; empty where there is nothing. */
    readonly notes: readonly string[]
    readonly coupons: readonly ChangedCoupon[]
  }

/** Judges the last coupons again by a draft, each by the facts of the exercise as it was, and says which would change verdict. */
export async function criteriaChange(viewer: Viewer, draft: DraftCriteria, of: CouponsOf): Promise<CriteriaChange> {
  const read = readDraft(draft, { id: 'own.draft', version: 1 })
  if (!read.ok) return { ok: false, problems: read.problems }
  const [judged, program] = await Promise.all([listJudgedCoupons(viewer, of, MOST), findProgram(viewer)])
  const twice = judged.map((coupon) => {
    const card = scoreInspection(weldOfExercise(coupon.exercise), coupon.readings.inspection, read.value)
    return { ...coupon, before: coupon.verdict, after: card.verdict, card }
  })
  const found = wouldChange(twice)
  const decided = found.changed.filter((coupon) => coupon.decided).length
  const unmeasured = found.changed.filter(({ after }) => after === 'incomplete').length
  return {
    ok: true, sentence: wouldChangeSentence(found), ways: found.ways.map(wayText),
    notes: [
      ...(unmeasured > 0 ? ['Incomplete: these limits ask for something that was not measured on the coupon.'] : []),
      ...(decided > 0 ? [`On ${decided} of them an instructor’s own decision stands over the computed verdict; it is the computed one that is compared.`] : []),
    ],
    coupons: found.changed.map(({ couponId, student, number, exercise, receivedAt, before, after, card }) => ({
      couponId, name: `${student}, coupon ${number}, ${exercise.title}, ${dateText(receivedAt, 'en', program.timeZone)}`,
      before: say(scorecardWords, 'en', before), after: say(scorecardWords, 'en', after),
      why: whyOf(after, card.findings.filter(({ verdict }) => verdict === (after === 'reject' ? 'reject' : 'not-measured')).map(({ rule }) => ruleName(rule, 'en', read.value))),
    })),
  }
}

/** The rules that decide the new verdict, in a few words. */
const whyOf = (after: Verdict, rules: readonly string[]): string => {
  if (after === 'accept') return 'every rule met'
  return `${after === 'reject' ? 'rejected by' : 'not measured for'} ${rules.join(', ').toLowerCase()}`
}

import 'server-only'
import type { DraftCriteria } from '@/lib/criteria/draft/draft'
import { readDraft, type BoxProblems } from '@/lib/criteria/draft/from-draft'
import { sampleCoupon, type SampleCoupon } from '@/lib/criteria/draft/sample-coupons'
import { SAMPLE_AS_IT_IS, withReadings, type SampleReadingProblems, type SampleReadings } from '@/lib/criteria/draft/sample-readings'
import { unitOf } from '@/lib/criteria/draft/to-draft'
import type { CriteriaSet } from '@/lib/criteria/types'
import { criteriaInWords, type RuleInWords } from '@/lib/reports/criteria-words'
import { lookView, type LookView } from '@/lib/reports/look-view'
import { scoreInspection } from '@/lib/scoring/score-inspection'
import { weldOfExercise } from '@/lib/scoring/weld-of-exercise'

export type RuleSaid = Pick<RuleInWords, 'name' | 'allows' | 'welds'>

export type CriteriaPreview = {
  readonly problems: BoxProblems
  /** Each rule of the draft in words; null while it cannot be read. */
  readonly rules: readonly (RuleSaid | null)[]
  /** What is wrong with the readings typed over the sample's. */
  readonly readings: SampleReadingProblems
  /** The sample coupon judged by the draft; null while the draft as a whole, or a typed reading, cannot be read. */
  readonly look: LookView | null
}

/** The id a draft is judged under before it has a version. */
const KEY = { id: 'own.draft', version: 1 }

/** What a draft would make of a sample coupon with these readings typed over its own, and its rules in words. Needs nothing stored. */
export function criteriaPreview(draft: DraftCriteria, sample: string, typed: SampleReadings = SAMPLE_AS_IT_IS): CriteriaPreview {
  const read = readDraft(draft, KEY)
  const coupon = withReadings(sampleCoupon(sample), typed, unitOf(draft.system))
  return {
    problems: read.ok ? {} : read.problems, readings: coupon.ok ? {} : coupon.problems, rules: draft.rules.map((rule) => said({ ...draft, rules: [rule] })),
    look: read.ok && coupon.ok ? sampleLook(read.value, coupon.value) : null,
  }
}

/** A rule alone, so that one that cannot be read yet leaves the others readable. */
function said(alone: DraftCriteria): RuleSaid | null {
  const weightless = { ...alone, title: 'x', edition: 'x', passMark: '1', rules: alone.rules.map((rule) => ({ ...rule, weight: '1' })) }
  const read = readDraft(weightless, KEY)
  const [words] = read.ok ? criteriaInWords(read.value).rules : []
  return words ? { name: words.name, allows: words.allows, welds: words.welds } : null
}

function sampleLook(criteria: CriteriaSet, { exercise, inspection }: SampleCoupon): LookView {
  const scorecard = scoreInspection(weldOfExercise(exercise), inspection, criteria)
  return lookView({ exercise, inspection, scorecard, criteria, reader: { units: unitOf(criteria.system), locale: 'en' } })
}

import type { TestReason } from '../qualification/test-result'
import type { Weld } from '../scoring/types'
import { CAUSES, type Cause, type Remedy } from './causes'
import { usualCauses } from './common-practice'
import type { Symptom } from './symptom'

/** What to practise after a test that did not pass: a symptom and what usually stands behind it. Common practice, no source. */
export type PracticeAfterTest = { readonly symptom: Symptom; readonly causes: readonly { readonly cause: Cause; readonly remedy: Remedy }[] }

/**
 * What each reason of a failed test shows of the welding. A fault opened by bending or breaking is most often fusion missed or slag
 * trapped; the look of the fracture decides which, and the person at the bench sees it.
 */
const SHOWN_BY: Partial<Readonly<Record<TestReason, readonly Symptom[]>>> = {
  'discontinuity-too-large': ['lack-of-fusion', 'slag'],
  'discontinuities-sum-too-large': ['slag', 'porosity'],
  'inclusion-too-large': ['slag', 'porosity'],
  'inclusions-sum-too-large': ['slag', 'porosity'],
  'root-not-fused': ['incomplete-penetration'],
  'crack-seen': ['crack'],
  'fusion-incomplete': ['lack-of-fusion'],
  'profile-not-acceptable': ['convex'],
  'undercut-too-deep': ['undercut'],
  'leg-too-small': ['leg-too-short'],
}
const MOST_CAUSES = 2

/** For the reasons of a failed test, the symptoms they show, each once in the order met, with the most usual causes for this process and position. */
export function practiceAfterTest(reasons: readonly TestReason[], weld: Pick<Weld, 'process' | 'position' | 'progression'>): PracticeAfterTest[] {
  const symptoms = [...new Set(reasons.flatMap((reason) => SHOWN_BY[reason] ?? []))]
  return symptoms.map((symptom) => ({
    symptom,
    causes: usualCauses(symptom, weld)
      .toSorted((a, b) => b.common - a.common)
      .slice(0, MOST_CAUSES)
      .map(({ cause }) => ({ cause, remedy: CAUSES[cause].remedy })),
  }))
}

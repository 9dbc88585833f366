import { judgeGuidedBend } from '@/lib/qualification/bend'
import { judgeFilletBreak } from '@/lib/qualification/fillet-break'
import type { TestParts } from '@/lib/schemas/test-attempt'
import { weld } from './bead'
import type { Dice } from './dice'
import { criteriaOf, inspect } from './inspect'
import { look, type Eye } from './look'
import type { Skill } from './learner'
import type { Progress } from './progress'

const LEAST_COUPONS = 5
const COUPONS_AFTER_FAILURE = 4

/** Whether the instructor puts a test plate up tonight: when the student is ready, now and then before. */
export function putsUpTest(progress: Progress, chance: number, dice: Dice): boolean {
  const { exercise, coupons, passed, failedAt } = progress
  if (exercise.criteria.id === 'shop-bead' || passed || coupons < LEAST_COUPONS) return false
  if (failedAt !== null && coupons < failedAt + COUPONS_AFTER_FAILURE) return false
  return dice.chance(chance >= 0.62 ? 0.5 : chance >= 0.48 ? 0.12 : 0.02)
}

/** What opens in a specimen when it is bent or broken; an unfused weld opens wide. */
function opened(skill: Skill, fused: boolean, dice: Dice): number[] {
  const count = dice.poisson(0.5 * Math.exp(-0.6 * skill.fusion))
  return Array.from({ length: count }, () => Math.round(dice.logNormal(fused ? 1 : 3, 0.5) * 10) / 10)
}

/** Welds and examines a test plate: looked at by an examiner who misses little, then bent or broken. */
export function takeTest({ exercise }: Progress, skill: Skill, dice: Dice): { readonly parts: TestParts; readonly passed: boolean } {
  const bead = weld(exercise, skill, dice)
  const examiner: Eye = { units: 'in', locale: 'en', decimals: 0, namesUnit: 0, sharpness: 1, slackMm: 0.08, kindnessMm: 0, depthFactor: 1, forgets: 0 }
  const { judged } = inspect(exercise, look(bead, exercise, criteriaOf(exercise), examiner, dice), examiner)
  const visual = judged.scorecard.verdict === 'accept' ? 'accept' : 'reject'
  // A plate that fails by eye is not cut up.
  if (visual === 'reject') return { parts: { visual, bends: null, filletBreak: null }, passed: false }
  if (exercise.weldType === 'groove') {
    const bends = (['face', 'root'] as const).map((face) => ({
      face, indications: opened(skill, bead.fusionComplete, dice).map((sizeMm) => ({ sizeMm, corner: dice.chance(0.2), fromSlagOrFusion: dice.chance(0.5) })),
    }))
    return { parts: { visual, bends, filletBreak: null }, passed: bends.every(({ indications }) => judgeGuidedBend(indications, 'us').verdict === 'accept') }
  }
  const filletBreak = { foldedFlat: dice.chance(0.4), rootFused: bead.fusionComplete && !dice.chance(0.05), inclusionsMm: opened(skill, bead.fusionComplete, dice) }
  if (filletBreak.foldedFlat) filletBreak.inclusionsMm = []
  return { parts: { visual, bends: null, filletBreak }, passed: judgeFilletBreak(filletBreak, 'us').verdict === 'accept' }
}

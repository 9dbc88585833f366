import type { Source } from '../source'
import { MM_PER_INCH } from '../units/length'
import { exceeds, requireSize, requireSystem, type UnitSystem } from './limits'

/** Something open on the convex face of a bent specimen. The side faces are not judged. */
export type BendIndication = {
  readonly sizeMm: number
  /** It starts at the corner of the specimen. */
  readonly corner: boolean
  /** Slag or another fusion fault is to be seen in it. */
  readonly fromSlagOrFusion: boolean
}

export type BendReason = 'discontinuity-too-large' | 'discontinuities-sum-too-large' | 'corner-crack-too-large'

export type BendJudgement = {
  /** 'replace': set the specimen aside and test another cut from the same weldment. */
  readonly verdict: 'accept' | 'reject' | 'replace'
  readonly reasons: BendReason[]
}

export type BendLimits = {
  readonly singleMm: number
  /** Discontinuities up to this size are left out of the sum. */
  readonly ignoredInSumMm: number
  readonly sumMm: number
  readonly cornerMm: number
}

export const BEND_SOURCE: Source = {
  title: 'AWS D1.1/D1.1M:2015',
  clause: '4.9.3.3',
  status: 'confirmed',
  note: '6.10.3.3 in the 2020 edition (clause number from memory). The clause sums "all" discontinuities of the middle size; corner cracks without a fusion fault have a limit of their own and are left out of the sum here.',
}

export const BEND_LIMITS: Readonly<Record<UnitSystem, BendLimits>> = {
  us: { singleMm: MM_PER_INCH / 8, ignoredInSumMm: MM_PER_INCH / 32, sumMm: (MM_PER_INCH * 3) / 8, cornerMm: MM_PER_INCH / 4 },
  si: { singleMm: 3, ignoredInSumMm: 1, sumMm: 10, cornerMm: 6 },
}

/**
 * Judges one guided bend specimen by the structural code. An empty list means the face was looked at and nothing was found.
 *
 * A corner crack is held to its own limit unless slag or a fusion fault shows in it; then it is a discontinuity like any other.
 * Over that limit it asks for a replacement specimen, unless something else on the face rejects the specimen anyway:
 * a bad corner must not rescue a bad weld.
 *
 * @throws RangeError for a size that is negative or not a number
 */
export function judgeGuidedBend(indications: readonly BendIndication[], system: UnitSystem): BendJudgement {
  const limits = BEND_LIMITS[requireSystem(system)]
  requireList(indications)
  for (const { sizeMm } of indications) requireSize(sizeMm, 'The size of a discontinuity')
  const cleanCorner = (i: BendIndication) => i.corner && !i.fromSlagOrFusion
  const judged = indications.filter(i => !cleanCorner(i)).map(i => i.sizeMm)
  const corners = indications.filter(cleanCorner).map(i => i.sizeMm)
  const sum = judged.filter(size => exceeds(size, limits.ignoredInSumMm) && !exceeds(size, limits.singleMm)).reduce((a, b) => a + b, 0)

  const faults: BendReason[] = []
  if (judged.some(size => exceeds(size, limits.singleMm))) faults.push('discontinuity-too-large')
  if (exceeds(sum, limits.sumMm)) faults.push('discontinuities-sum-too-large')
  const setAside: BendReason[] = corners.some(size => exceeds(size, limits.cornerMm)) ? ['corner-crack-too-large'] : []

  if (faults.length > 0) return { verdict: 'reject', reasons: [...faults, ...setAside] }
  if (setAside.length > 0) return { verdict: 'replace', reasons: setAside }
  return { verdict: 'accept', reasons: [] }
}

export const ISO_BEND_SOURCE: Source = {
  title: 'ISO 9606-1:2012',
  clause: '7',
  status: 'memory',
  note: 'EN 287-1:2011 clause 7 carries the 3 mm rule and the rule on edges. The 10 mm sum is from memory. From 3 mm up rejects.',
}

export const ISO_BEND_LIMITS = { rejectFromMm: 3, ignoredInSumMm: 1, sumMm: 10 } as const

/**
 * Judges one bend specimen of a test to ISO 9606-1: no single flaw of 3 mm or more, and flaws over 1 mm add up to at most 10 mm.
 * Flaws at the edge do not count unless they come from slag, lack of fusion or lack of penetration.
 *
 * @throws RangeError for a size that is negative or not a number
 */
export function judgeIsoBend(indications: readonly BendIndication[]): BendJudgement {
  requireList(indications)
  for (const { sizeMm } of indications) requireSize(sizeMm, 'The size of a flaw')
  const sizes = indications.filter(i => !i.corner || i.fromSlagOrFusion).map(i => i.sizeMm)
  const tooLarge = (size: number) => !exceeds(ISO_BEND_LIMITS.rejectFromMm, size)
  const sum = sizes.filter(size => exceeds(size, ISO_BEND_LIMITS.ignoredInSumMm) && !tooLarge(size)).reduce((a, b) => a + b, 0)

  const reasons: BendReason[] = []
  if (sizes.some(tooLarge)) reasons.push('discontinuity-too-large')
  if (exceeds(sum, ISO_BEND_LIMITS.sumMm)) reasons.push('discontinuities-sum-too-large')
  return { verdict: reasons.length > 0 ? 'reject' : 'accept', reasons }
}

function requireList(indications: readonly BendIndication[]): void {
  if (!Array.isArray(indications)) throw new RangeError('A bend specimen needs the list of what was seen on it; an empty list when nothing was.')
}

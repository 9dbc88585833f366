import type { Source } from '../source'
import { MM_PER_INCH } from '../units/length'
import { exceeds, requireSize, requireSystem, type UnitSystem } from './limits'

export type FilletBreak = {
  /** The leg folded flat without the weld coming apart: there is no fracture to look at. */
  readonly foldedFlat: boolean
  readonly rootFused: boolean
  /** Greatest dimension of every inclusion and pore on the fracture. */
  readonly inclusionsMm: readonly number[]
}

export type FilletBreakReason = 'root-not-fused' | 'inclusion-too-large' | 'inclusions-sum-too-large'
export type FilletBreakJudgement = { readonly verdict: 'accept' | 'reject'; readonly reasons: FilletBreakReason[] }

export const FILLET_BREAK_SOURCE: Source = {
  title: 'AWS D1.1/D1.1M:2010',
  clause: '4.31.4.1',
  status: 'secondary',
  note: 'Read as quoted by inspectors and in two test summaries. 4.22.4.1 in 2015 and 6.23.4.1 in 2020 (clause numbers from memory).',
}

/** The sum is for the specimen the code asks for, 6 in (150 mm) long. */
export const FILLET_BREAK_LIMITS: Readonly<Record<UnitSystem, { readonly singleMm: number; readonly sumMm: number; readonly specimenMm: number }>> = {
  us: { singleMm: (MM_PER_INCH * 3) / 32, sumMm: (MM_PER_INCH * 3) / 8, specimenMm: MM_PER_INCH * 6 },
  si: { singleMm: 2.5, sumMm: 10, specimenMm: 150 },
}

/**
 * Judges a fillet weld break specimen: it passes when it folds flat on itself, or when the fracture is fused to the root and
 * its inclusions and pores stay within the limits, singly and together.
 *
 * @throws RangeError for a size that is negative or not a number
 */
export function judgeFilletBreak(specimen: FilletBreak, system: UnitSystem): FilletBreakJudgement {
  const limits = FILLET_BREAK_LIMITS[requireSystem(system)]
  if (!Array.isArray(specimen.inclusionsMm)) throw new RangeError('A fillet break needs the list of its inclusions and pores; an empty list when there are none.')
  const sizes = specimen.inclusionsMm.map(size => requireSize(size, 'The size of an inclusion'))
  if (specimen.foldedFlat) return { verdict: 'accept', reasons: [] }

  const reasons: FilletBreakReason[] = []
  if (!specimen.rootFused) reasons.push('root-not-fused')
  if (sizes.some(size => exceeds(size, limits.singleMm))) reasons.push('inclusion-too-large')
  if (exceeds(sizes.reduce((a, b) => a + b, 0), limits.sumMm)) reasons.push('inclusions-sum-too-large')
  return { verdict: reasons.length > 0 ? 'reject' : 'accept', reasons }
}

// Outside source: AWS D1.1:2010 clause 4.31.4.1 as quoted by inspectors (secondary), and two public test summaries that agree:
// folds flat, or fused to the root with no inclusion over 3/32 in (2.5 mm) and at most 3/8 in (10 mm) of them in 6 in (150 mm).
import { describe, expect, it } from 'vitest'
import { FILLET_BREAK_LIMITS, judgeFilletBreak } from '@/lib/qualification/fillet-break'

const STEP = 0.01
const fractured = (inclusionsMm: number[], rootFused = true) => ({ foldedFlat: false, rootFused, inclusionsMm })

describe.each([
  { system: 'us', single: (25.4 * 3) / 32, sum: (25.4 * 3) / 8 },
  { system: 'si', single: 2.5, sum: 10 },
] as const)('in $system', ({ system, single, sum }) => {
  it('accepts a specimen that folds flat on itself', () => {
    expect(judgeFilletBreak({ foldedFlat: true, rootFused: true, inclusionsMm: [] }, system)).toEqual({ verdict: 'accept', reasons: [] })
  })

  it('accepts a sound fracture and rejects one that is not fused to the root', () => {
    expect(judgeFilletBreak(fractured([]), system).verdict).toBe('accept')
    expect(judgeFilletBreak(fractured([], false), system)).toEqual({ verdict: 'reject', reasons: ['root-not-fused'] })
  })

  it('accepts one inclusion at the limit and rejects it a step over', () => {
    expect(judgeFilletBreak(fractured([single]), system).verdict).toBe('accept')
    expect(judgeFilletBreak(fractured([single + STEP]), system)).toEqual({ verdict: 'reject', reasons: ['inclusion-too-large'] })
  })

  it('accepts a sum at the limit and rejects it a step over, small ones counted', () => {
    const eighths = Array.from({ length: 8 }, () => sum / 8)
    expect(judgeFilletBreak(fractured(eighths), system).verdict).toBe('accept')
    expect(judgeFilletBreak(fractured([...eighths, STEP]), system)).toEqual({ verdict: 'reject', reasons: ['inclusions-sum-too-large'] })
  })
})

it('treats the two columns of the code as two rules: 2.45 mm passes in millimetres and fails in inches', () => {
  expect(judgeFilletBreak(fractured([2.45]), 'si').verdict).toBe('accept')
  expect(judgeFilletBreak(fractured([2.45]), 'us').verdict).toBe('reject')
})

it('states the length of specimen the sum is for', () => {
  expect(FILLET_BREAK_LIMITS.us.specimenMm).toBe(6 * 25.4)
  expect(FILLET_BREAK_LIMITS.si.specimenMm).toBe(150)
})

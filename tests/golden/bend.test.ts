// Outside source: AWS D1.1/D1.1M:2015 clause 4.9.3.3 (acceptance criteria for bend tests), read in a stored copy of the page:
// 1/8 in (3 mm) in any direction; 3/8 in (10 mm) for the sum of those over 1/32 in (1 mm) and up to 1/8 in;
// 1/4 in (6 mm) for a corner crack unless slag or a fusion fault caused it; over that, a replacement specimen.
// The ISO cases: EN 287-1:2011 clause 7 (3 mm, edges); the 10 mm sum is from memory.
import { describe, expect, it } from 'vitest'
import { judgeGuidedBend, judgeIsoBend, type BendIndication } from '@/lib/qualification/bend'

const STEP = 0.01
const open = (sizeMm: number): BendIndication => ({ sizeMm, corner: false, fromSlagOrFusion: false })
const cleanCorner = (sizeMm: number): BendIndication => ({ sizeMm, corner: true, fromSlagOrFusion: false })
const slagCorner = (sizeMm: number): BendIndication => ({ sizeMm, corner: true, fromSlagOrFusion: true })

describe.each([
  { system: 'us', single: 25.4 / 8, ignored: 25.4 / 32, sum: (25.4 * 3) / 8, corner: 25.4 / 4 },
  { system: 'si', single: 3, ignored: 1, sum: 10, corner: 6 },
] as const)('in $system', ({ system, single, ignored, sum, corner }) => {
  it('accepts a clean face', () => {
    expect(judgeGuidedBend([], system)).toEqual({ verdict: 'accept', reasons: [] })
  })

  it('accepts one discontinuity at the limit and rejects it a step over', () => {
    expect(judgeGuidedBend([open(single)], system).verdict).toBe('accept')
    expect(judgeGuidedBend([open(single + STEP)], system)).toEqual({ verdict: 'reject', reasons: ['discontinuity-too-large'] })
  })

  it('accepts a sum at the limit and rejects it a step over', () => {
    const quarter = sum / 4
    expect(judgeGuidedBend([1, 2, 3, 4].map(() => open(quarter)), system).verdict).toBe('accept')
    expect(judgeGuidedBend([1, 2, 3, 4].map(() => open(quarter + STEP)), system)).toEqual({ verdict: 'reject', reasons: ['discontinuities-sum-too-large'] })
  })

  it('leaves discontinuities up to the small size out of the sum, and counts them a step over', () => {
    const many = (size: number) => Array.from({ length: 20 }, () => open(size))
    expect(judgeGuidedBend(many(ignored), system).verdict).toBe('accept')
    expect(judgeGuidedBend(many(ignored + STEP), system).verdict).toBe('reject')
  })

  it('accepts a clean corner crack at its own limit and asks for a replacement a step over', () => {
    expect(judgeGuidedBend([cleanCorner(corner)], system)).toEqual({ verdict: 'accept', reasons: [] })
    expect(judgeGuidedBend([cleanCorner(corner + STEP)], system)).toEqual({ verdict: 'replace', reasons: ['corner-crack-too-large'] })
  })

  it('holds a corner crack from slag to the limit for any discontinuity', () => {
    expect(judgeGuidedBend([slagCorner(single)], system).verdict).toBe('accept')
    expect(judgeGuidedBend([slagCorner(single + STEP)], system).verdict).toBe('reject')
    expect(judgeGuidedBend([slagCorner(corner + STEP)], system).verdict).toBe('reject')
  })

  it('does not let a bad corner rescue a face that is rejected anyway', () => {
    expect(judgeGuidedBend([open(single + STEP), cleanCorner(corner + STEP)], system)).toEqual({
      verdict: 'reject', reasons: ['discontinuity-too-large', 'corner-crack-too-large'],
    })
  })
})

it('treats the two columns of the code as two rules: 3.1 mm passes in inches and fails in millimetres', () => {
  expect(judgeGuidedBend([open(3.1)], 'us').verdict).toBe('accept')
  expect(judgeGuidedBend([open(3.1)], 'si').verdict).toBe('reject')
})

describe('to ISO 9606-1', () => {
  it('rejects a flaw from 3 mm up, the limit itself included', () => {
    expect(judgeIsoBend([open(2.99)]).verdict).toBe('accept')
    expect(judgeIsoBend([open(3)])).toEqual({ verdict: 'reject', reasons: ['discontinuity-too-large'] })
  })

  it('adds up flaws over 1 mm to 10 mm at most (from memory)', () => {
    expect(judgeIsoBend([2.5, 2.5, 2.5, 2.5].map(open)).verdict).toBe('accept')
    expect(judgeIsoBend([2.5, 2.5, 2.5, 2.51].map(open)).reasons).toEqual(['discontinuities-sum-too-large'])
    expect(judgeIsoBend(Array.from({ length: 20 }, () => open(1))).verdict).toBe('accept')
    expect(judgeIsoBend(Array.from({ length: 20 }, () => open(1.01))).verdict).toBe('reject')
  })

  it('ignores the edges unless slag or a fusion fault is behind them', () => {
    expect(judgeIsoBend([cleanCorner(8)]).verdict).toBe('accept')
    expect(judgeIsoBend([slagCorner(8)]).verdict).toBe('reject')
  })
})

import { describe, expect, it } from 'vitest'
import { expectedWorst } from '@/lib/readiness/expected-worst'
import { worstMargin } from '@/lib/readiness/worst-margin'
import type { Finding, FindingVerdict, Scorecard } from '@/lib/scoring/types'

const finding = (rule: string, verdict: FindingVerdict, margin: number | null = null): Finding => ({
  rule, verdict, margin, measured: margin, limit: { min: null, max: null }, unit: 'mm', closeCall: false, where: null,
  source: { title: 'made up for this test', clause: null, status: 'common-practice' },
})
const scorecard = (...findings: Finding[]): Scorecard => ({ criteriaId: 'made-up', scoringVersion: '1', verdict: 'accept', mark: null, findings })
const criteria = {
  rules: [
    { id: 'leg-size', readiness: { as: 'margin', scale: 2 } },
    { id: 'undercut', readiness: { as: 'margin', scale: 0.5 } },
    { id: 'crack', readiness: { as: 'attribute' } },
    { id: 'crater', readiness: { as: 'attribute' } },
  ],
} as const

describe('the worst standardised margin', () => {
  it('is the smallest margin over its rule’s scale, with the rule that holds it', () => {
    const found = worstMargin(scorecard(finding('leg-size', 'accept', 1), finding('undercut', 'accept', 0.2), finding('crack', 'accept')), criteria)
    expect(found).toEqual({ worstMargin: 0.4, worstRule: 'undercut', attributesGood: true, incomplete: false })
  })

  it('goes below 0 outside', () => {
    expect(worstMargin(scorecard(finding('leg-size', 'reject', -1)), criteria).worstMargin).toBe(-0.5)
  })

  it('is held within the filter’s grid', () => {
    expect(worstMargin(scorecard(finding('leg-size', 'accept', 1e6)), criteria).worstMargin).toBeCloseTo(2.5, 12)
    expect(worstMargin(scorecard(finding('leg-size', 'reject', -1e6)), criteria).worstMargin).toBe(-3.5)
  })

  it('leaves out rules that do not apply', () => {
    const found = worstMargin(scorecard(finding('leg-size', 'not-applicable'), finding('undercut', 'accept', 0.3)), criteria)
    expect(found.worstMargin).toBeCloseTo(0.6, 12)
    expect(found.incomplete).toBe(false)
  })
})

describe('yes/no rules', () => {
  it('are good only when all passed', () => {
    expect(worstMargin(scorecard(finding('crack', 'accept'), finding('crater', 'reject')), criteria).attributesGood).toBe(false)
    expect(worstMargin(scorecard(finding('crack', 'accept'), finding('crater', 'accept')), criteria).attributesGood).toBe(true)
  })
  it('are null where no rule asks', () => {
    expect(worstMargin(scorecard(finding('leg-size', 'accept', 1)), criteria).attributesGood).toBeNull()
  })
  it('include a margin rule that was judged without a margin', () => {
    expect(worstMargin(scorecard(finding('undercut', 'reject'), finding('leg-size', 'accept', 1)), criteria)).toMatchObject({ worstMargin: 0.5, attributesGood: false })
  })
})

describe('something not measured', () => {
  it.each<[string, Finding[]]>([
    ['one rule', [finding('leg-size', 'accept', 1), finding('crack', 'not-measured')]],
    ['every rule', [finding('leg-size', 'not-measured'), finding('crack', 'not-measured')]],
    ['beside a rejected rule', [finding('leg-size', 'reject', -1), finding('crack', 'not-measured')]],
    ['no finding at all', []],
  ])('%s: margins and yes/no rules are withheld, never 0', (_, findings) => {
    expect(worstMargin(scorecard(...findings), criteria)).toEqual({ worstMargin: null, worstRule: null, attributesGood: null, incomplete: true })
  })
})

describe('a station count that is not the fixed one', () => {
  // Expected largest of n standard normals: Tippett 1925, Biometrika 17:364 (from memory); exact forms for n = 2, 3 from David & Nagaraja, Order Statistics, 3rd ed., table 3.2.1 (from memory).
  it.each([[1, 0], [2, 1 / Math.sqrt(Math.PI)], [3, 1.5 / Math.sqrt(Math.PI)], [5, 1.16296], [10, 1.53875], [20, 1.86748], [100, 2.50759]])(
    'the worst of %i lies %f sd out', (n, sd) => expect(expectedWorst(n)).toBeCloseTo(sd, 5),
  )

  const card = scorecard(finding('leg-size', 'accept', 1), finding('undercut', 'accept', 0.4))
  it('ten stations where five are fixed: the margin is lifted by 0.376 within-bead sd', () => {
    const found = worstMargin(card, criteria, { fixed: 5, used: 10, withinBeadSd: { 'leg-size': 0.3 } })
    expect(found.worstMargin).toBeCloseTo((1 + (1.53875 - 1.16296) * 0.3) / 2, 5)
  })
  it('fewer stations lower it', () => {
    const found = worstMargin(card, criteria, { fixed: 10, used: 5, withinBeadSd: { 'leg-size': 0.3 } })
    expect(found.worstMargin).toBeCloseTo((1 - (1.53875 - 1.16296) * 0.3) / 2, 5)
  })
  it('rules not named, and the same count, change nothing', () => {
    expect(worstMargin(card, criteria, { fixed: 5, used: 10, withinBeadSd: {} }).worstMargin).toBe(0.5)
    expect(worstMargin(card, criteria, { fixed: 5, used: 5, withinBeadSd: { 'leg-size': 0.3 } }).worstMargin).toBe(0.5)
  })
})

describe('bad input', () => {
  it.each<[string, () => unknown]>([
    ['a rule of other criteria', () => worstMargin(scorecard(finding('516', 'accept', 1)), criteria)],
    ['a scale of 0', () => worstMargin(scorecard(finding('a', 'accept', 1)), { rules: [{ id: 'a', readiness: { as: 'margin', scale: 0 } }] })],
    ['a margin that is no number', () => worstMargin(scorecard(finding('leg-size', 'accept', NaN)), criteria)],
    ['no stations', () => worstMargin(scorecard(finding('leg-size', 'accept', 1)), criteria, { fixed: 5, used: 0, withinBeadSd: {} })],
    ['a negative spread', () => worstMargin(scorecard(finding('leg-size', 'accept', 1)), criteria, { fixed: 5, used: 5, withinBeadSd: { 'leg-size': -1 } })],
  ])('%s throws', (_, call) => expect(call).toThrow(RangeError))
})

import { describe, expect, it } from 'vitest'
import type { Reason } from '@/lib/coaching/needs-you/needs-you'
import { reasonText, type ReasonContext } from '@/lib/reports/needs-you-words'
import { selfTrust } from '@/lib/readiness/self-trust'

const context: ReasonContext = {
  titleOf: () => '3F up lap', ruleOf: (rule) => ({ undercut: 'Undercut', width: 'Bead width' })[rule] ?? rule,
  chanceOf: () => ({ probability: 0.812, low: 0.66, high: 0.92, coupons: 16 }), timeText: () => '6:42 PM', look: null,
}
const said = (reason: Reason, more: Partial<ReasonContext> = {}) => reasonText(reason, { ...context, ...more })
const pairs = [...Array.from({ length: 5 }, () => ({ self: 'accept', instructor: 'reject' }) as const), { self: 'reject', instructor: 'accept' } as const, { self: 'accept', instructor: 'accept' } as const]

describe('why a student needs the instructor, in words', () => {
  it('says what they asked, when, and in their own words', () => {
    const asked: Reason = { code: 'wants-a-look', askedAt: new Date(0) }
    expect(said(asked)).toBe('Asked for a look, waiting since 6:42 PM.')
    expect(said(asked, { look: { exercise: '3F up lap', note: 'porosity when I start' } })).toBe('Asked for a look at 3F up lap, waiting since 6:42 PM: “porosity when I start”')
  })
  it('says which cautions keep them from logging', () => {
    expect(said({ code: 'safety-unsigned', exerciseId: 'e' })).toBe('Has not confirmed the cautions of 3F up lap this term, so cannot log a coupon of it.')
    expect(said({ code: 'safety-next', exerciseId: 'e' })).toBe('Comes to 3F up lap next; its cautions are to be confirmed first.')
  })
  it('names the defects, their side where there are two, and the coupons', () => {
    const coupons = [5, 6, 8]
    expect(said({ code: 'same-defect', exerciseId: 'e', coupons, defects: [{ rule: 'undercut', side: 'seen' }] })).toBe('Undercut three coupons running, 3F up lap (no. 5, 6 and 8).')
    expect(said({ code: 'same-defect', exerciseId: 'e', coupons, defects: [{ rule: 'undercut', side: 'seen' }, { rule: 'width', side: 'under' }] }))
      .toBe('Undercut and bead width under the least allowed three coupons running, 3F up lap (no. 5, 6 and 8).')
    expect(said({ code: 'same-defect', exerciseId: 'e', coupons, defects: [{ rule: 'width', side: 'over' }] })).toMatch(/^Bead width over the most allowed three/)
  })
  it('gives the chance with its limits, or none where there is none', () => {
    expect(said({ code: 'ready-for-test', exerciseId: 'e' })).toBe('A test makes sense, 3F up lap: chance 0.81, between 0.66 and 0.92, from 16 coupons.')
    expect(said({ code: 'ready-for-test', exerciseId: 'e' }, { chanceOf: () => null })).toBe('A test makes sense, 3F up lap.')
  })
  it('sets the marks beside each other', () => {
    expect(said({ code: 'no-gain', exerciseId: 'e', before: 64.4, lately: 61.75 })).toBe('No gain over the last eight coupons, 3F up lap: mark 62 on average in the last four, 64 in the four before.')
  })
  it('counts how often the looks agreed, and which way they did not', () => {
    expect(said({ code: 'self-far', trust: selfTrust(pairs) })).toBe('Own looks agree with the instructor’s on 1 of the last 7 coupons: 5 accepted that the instructor rejected, 1 rejected that the instructor accepted.')
  })
  it('counts the days of a gap', () => {
    expect(said({ code: 'gap', days: 24, never: false })).toBe('No coupon for 24 days.')
    expect(said({ code: 'gap', days: 15, never: true })).toBe('No coupon yet, 15 days into the class.')
  })
})

import { describe, expect, it } from 'vitest'
import { standing, type SkillFigures } from '@/lib/reports/standing'

const skill = (given: Partial<SkillFigures> = {}): SkillFigures => ({
  couponCount: 8, inspectedCount: 6, acceptedCount: 5, waitingCount: 2, probability: 0.7249, low: 0.5, high: 0.884, advice: 'test', couponsUsed: 6, ...given,
})

describe('a standing', () => {
  it('is a chance with its limits and the advice, in the reader’s words', () => {
    expect(standing(skill(), 5, 'en')).toEqual({ probability: 0.7249, text: '0.72', spoken: 'chance of passing 0.72, between 0.50 and 0.88', adviceText: 'Ready to talk about a test' })
    expect(standing(skill({ advice: 'practise' }), 5, 'es').adviceText).toBe('Sigue practicando')
  })

  it('without coupons is "not started" and shows nothing', () => {
    for (const none of [undefined, skill({ couponCount: 0, couponsUsed: 0, probability: null, low: null, high: null, advice: null })]) {
      expect(standing(none, 5, 'en')).toEqual({ probability: null, text: '', spoken: 'not started', adviceText: null })
    }
  })

  it('with too few coupons says how many of how many, and gives no chance', () => {
    const few = skill({ couponCount: 4, couponsUsed: 3, probability: null, low: null, high: null, advice: null })
    expect(standing(few, 5, 'en')).toEqual({ probability: null, text: '3 of 5', spoken: 'not enough yet: 3 of 5 coupons', adviceText: null })
    expect(standing(few, 7, 'en').text).toBe('3 of 7')
  })

  it('with coupons that nobody vouches for says none of five', () => {
    expect(standing(skill({ couponCount: 9, couponsUsed: 0, probability: null, low: null, high: null, advice: null }), 5, 'en').text).toBe('0 of 5')
  })

  it('never promises or denies: a chance is shown as 0.99 at most and 0.01 at least', () => {
    expect(standing(skill({ probability: 0.9999, high: 1 }), 5, 'en')).toMatchObject({ text: '0.99', spoken: 'chance of passing 0.99, between 0.50 and 0.99' })
    expect(standing(skill({ probability: 0.0001, low: 0 }), 5, 'en').text).toBe('0.01')
  })
})

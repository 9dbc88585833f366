import { describe, expect, it } from 'vitest'
import { isBehind, nextUp, type Practised } from '@/lib/readiness/next-up'

const on = (day: number, advice: Practised['advice']): Practised => ({ advice, lastCouponAt: new Date(Date.UTC(2026, 9, day)) })
const next = (...skills: (Practised | undefined)[]) => nextUp(skills.map((skill, index) => ({ name: 'abcde'[index], skill })))?.name

describe('the exercise to go on with', () => {
  it('is the first when nothing was practised, and none when there is none', () => {
    expect(next(undefined, undefined)).toBe('a')
    expect(nextUp([])).toBeNull()
  })
  it('is the one last welded, wherever it stands in the order', () => {
    expect(next(on(9, 'practise'), on(12, 'close'), on(11, null))).toBe('b')
  })
  it('is the first not started after one that has reached a test, even when that has faded', () => {
    expect(next(undefined, on(12, 'test'), on(3, 'practise'), undefined)).toBe('d')
    expect(next(on(12, 'stale'), undefined)).toBe('b')
  })
  it('is the first still to be learned when all are started, and the last one when all are behind', () => {
    expect(next(on(2, 'practise'), on(12, 'test'))).toBe('a')
    expect(next(on(2, 'test'), on(12, 'test'))).toBe('b')
  })
  it('leaves an exercise behind once a test makes sense in it, not before', () => {
    expect([on(1, 'test'), on(1, 'stale'), on(1, 'close'), on(1, 'practise'), on(1, null), undefined].map(isBehind)).toEqual([true, true, false, false, false, false])
  })
})

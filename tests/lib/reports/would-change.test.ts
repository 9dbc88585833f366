// How many coupons other limits would judge otherwise, and which way.
import { expect, it } from 'vitest'
import { wayText, wouldChange, wouldChangeSentence, type JudgedTwice } from '@/lib/reports/would-change'
import type { Verdict } from '@/lib/scoring/types'

const coupon = (before: Verdict, after: Verdict, couponId = `${before}-${after}`): JudgedTwice => ({ couponId, before, after })

it('counts which way coupons change, most first, and keeps their order', () => {
  const found = wouldChange([coupon('reject', 'accept', 'a'), coupon('accept', 'accept', 'b'), coupon('accept', 'reject', 'c'), coupon('accept', 'reject', 'd'), coupon('incomplete', 'incomplete', 'e')])
  expect(found).toMatchObject({ total: 5, ways: [{ before: 'accept', after: 'reject', count: 2 }, { before: 'reject', after: 'accept', count: 1 }] })
  expect(found.changed.map(({ couponId }) => couponId)).toEqual(['a', 'c', 'd'])
  expect(found.ways.map(wayText)).toEqual(['2 from accepted to rejected', '1 from rejected to accepted'])
  expect(wouldChangeSentence(found)).toBe('With these limits, 3 of the last 5 coupons would change verdict.')
})

it.each([
  [[], 'No coupon has been judged here yet, so nothing can be said about these limits.'],
  [[coupon('accept', 'accept')], 'With these limits, the one coupon there is would keep its verdict.'],
  [[coupon('accept', 'incomplete')], 'With these limits, the one coupon there is would change verdict.'],
  [[coupon('accept', 'accept'), coupon('reject', 'reject')], 'With these limits, none of the last 2 coupons would change verdict.'],
])('says it of few or none: %j', (coupons, sentence) => expect(wouldChangeSentence(wouldChange(coupons))).toBe(sentence))

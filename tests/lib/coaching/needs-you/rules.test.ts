// Each rule on both sides of each of its thresholds. The thresholds themselves are common practice, without a source.
import { describe, expect, it } from 'vitest'
import { GAP_DAYS, gap, type Attendance } from '@/lib/coaching/needs-you/gap'
import { NO_GAIN_COUPONS, noGain } from '@/lib/coaching/needs-you/no-gain'
import { defectOf, RECENT_COUPONS, type Defect, type RecentCoupon } from '@/lib/coaching/needs-you/recent-coupon'
import { SAME_DEFECT_COUPONS, sameDefects } from '@/lib/coaching/needs-you/same-defect'
import { selfFar } from '@/lib/coaching/needs-you/self-far'
import { heldUp, UNSIGNED_DAYS } from '@/lib/coaching/needs-you/unsigned'
import { LEAST_COMPARED } from '@/lib/readiness/self-trust'

const coupon = (number: number, more: Partial<RecentCoupon> = {}): RecentCoupon => ({ number, verdict: 'reject', mark: 60, selfVerdict: null, defects: [], ...more })
const undercut: Defect = { rule: 'undercut', side: 'seen' }
const narrow: Defect = { rule: 'width-in-band', side: 'under' }
const wide: Defect = { rule: 'width-in-band', side: 'over' }

describe('the same defect running', () => {
  const seen = (...each: (readonly Defect[] | null)[]) => sameDefects(each.map((defects, index) => coupon(index + 5, { defects })))

  it('counts from the third coupon on', () => {
    expect(SAME_DEFECT_COUPONS).toBe(3)
    expect(seen([undercut], [undercut])).toBeNull()
    expect(seen([undercut], [undercut], [undercut])).toEqual({ defects: [undercut], coupons: [5, 6, 7] })
  })
  it('is broken by one coupon without it', () => {
    expect(seen([undercut], [], [undercut])).toBeNull()
    expect(seen([undercut], [undercut], [undercut], [])).toBeNull()
  })
  it('forgets what lies before the last three', () => {
    expect(seen([], [undercut], [undercut], [undercut])).toEqual({ defects: [undercut], coupons: [6, 7, 8] })
  })
  it('is another one on the other side of the limit', () => {
    expect(seen([narrow], [wide], [narrow])).toBeNull()
    expect(seen([narrow, undercut], [narrow], [narrow, undercut])).toEqual({ defects: [narrow], coupons: [5, 6, 7] })
    expect(seen([undercut, narrow], [narrow, undercut], [narrow, undercut])?.defects).toEqual([narrow, undercut])
  })
  it('is not claimed over a coupon whose findings were not read', () => {
    expect(seen([undercut], null, [undercut])).toBeNull()
    expect(seen([undercut], [undercut], null)).toBeNull()
  })
  it('lies under or over where the rule has both limits, and is only seen where it can reject in one way', () => {
    const limit = { min: 5, max: 7 }
    expect(defectOf({ rule: 'w', measured: 4.99, limit })).toEqual({ rule: 'w', side: 'under' })
    expect(defectOf({ rule: 'w', measured: 7.01, limit })).toEqual({ rule: 'w', side: 'over' })
    expect(defectOf({ rule: 'w', measured: null, limit })).toEqual({ rule: 'w', side: 'seen' })
    expect(defectOf({ rule: 'w', measured: 1, limit: { min: null, max: 0 } })).toEqual({ rule: 'w', side: 'seen' })
    expect(defectOf({ rule: 'w', measured: 4, limit: { min: 5, max: null } })).toEqual({ rule: 'w', side: 'under' })
  })
})

describe('no gain', () => {
  const marks = (...each: (number | null)[]) => each.map((mark, index) => coupon(index + 1, { mark, verdict: mark === null ? 'incomplete' : mark >= 90 ? 'accept' : 'reject' }))

  it('is looked for over eight marked coupons, not seven', () => {
    expect(NO_GAIN_COUPONS).toBe(8)
    expect(NO_GAIN_COUPONS).toBeLessThanOrEqual(RECENT_COUPONS)
    expect(noGain(marks(60, 60, 60, 60, 60, 60, 60))).toBeNull()
    expect(noGain(marks(60, 60, 60, 60, 60, 60, 60, 60))).toEqual({ before: 60, lately: 60 })
  })
  it('is a mean that has not risen; a rise by one mark in four is a gain', () => {
    expect(noGain(marks(60, 70, 60, 70, 65, 65, 65, 65))).toEqual({ before: 65, lately: 65 })
    expect(noGain(marks(60, 70, 60, 70, 65, 65, 65, 66))).toBeNull()
    expect(noGain(marks(70, 70, 70, 70, 50, 60, 70, 40))).toEqual({ before: 70, lately: 55 })
  })
  it('reads the last eight only, and skips coupons without a mark instead of counting them as 0', () => {
    expect(noGain(marks(10, 60, 60, 60, 60, 60, 60, 60, 60))).toEqual({ before: 60, lately: 60 })
    expect(noGain(marks(60, 60, 60, 60, 60, 60, 60, null))).toBeNull()
    expect(noGain(marks(60, 60, null, 60, 60, 60, 60, 60, 60))).toEqual({ before: 60, lately: 60 })
  })
  it('is no trouble when all of the last four were accepted; it is when one was not', () => {
    expect(noGain(marks(95, 95, 95, 95, 92, 92, 92, 92))).toBeNull()
    expect(noGain(marks(95, 95, 95, 95, 92, 92, 92, 89))).toEqual({ before: 95, lately: 91.25 })
  })
})

describe('a gap', () => {
  const at = (more: Partial<Attendance>) => gap({ today: 100, termStarts: 0, termEnds: 200, joined: 0, lastCoupon: 99, ...more })

  it('begins on the fourteenth day without a coupon', () => {
    expect(GAP_DAYS).toBe(14)
    expect(at({ lastCoupon: 87 })).toBeNull()
    expect(at({ lastCoupon: 86 })).toEqual({ days: 14, never: false })
  })
  it('counts from joining for who never logged one', () => {
    expect(at({ lastCoupon: null, joined: 87 })).toBeNull()
    expect(at({ lastCoupon: null, joined: 86 })).toEqual({ days: 14, never: true })
  })
  it('does not count days before the term', () => {
    expect(at({ lastCoupon: 10, termStarts: 87 })).toBeNull()
    expect(at({ lastCoupon: 10, termStarts: 86 })).toEqual({ days: 14, never: false })
    expect(at({ lastCoupon: null, joined: 10, termStarts: 90 })).toBeNull()
  })
  it('is no longer told after the last day of the term', () => {
    expect(at({ lastCoupon: 50, termEnds: 100 })).toEqual({ days: 50, never: false })
    expect(at({ lastCoupon: 50, termEnds: 99 })).toBeNull()
  })
})

describe('own looks far from the instructor’s', () => {
  const looks = (alike: number, unlike: number) => [
    ...Array.from({ length: alike }, (_, index) => coupon(index, { verdict: 'accept', selfVerdict: 'accept' })),
    ...Array.from({ length: unlike }, (_, index) => coupon(50 + index, { verdict: 'reject', selfVerdict: 'accept' })),
  ]

  it('take five compared coupons', () => {
    expect(LEAST_COMPARED).toBe(5)
    expect(selfFar(looks(0, 4))).toBeNull()
    expect(selfFar(looks(0, 5))).toMatchObject({ compared: 5, agreed: 0, tooKind: 5, tooStrict: 0 })
  })
  it('agree on half of them or less', () => {
    expect(selfFar(looks(3, 3))).toMatchObject({ compared: 6, agreed: 3 })
    expect(selfFar(looks(4, 3))).toBeNull()
  })
  it('compare only coupons on which both reached a verdict', () => {
    const open = [coupon(1, { verdict: 'incomplete', selfVerdict: 'accept' }), coupon(2, { verdict: 'reject', selfVerdict: 'incomplete' }), coupon(3, { verdict: 'reject', selfVerdict: null })]
    expect(selfFar([...looks(0, 4), ...open])).toBeNull()
  })
})

describe('cautions that hold a student up', () => {
  const attendance: Attendance = { today: 100, termStarts: 0, termEnds: 200, joined: 90, lastCoupon: 100 }
  const tee = { exerciseId: 'tee', begun: false }
  const idle = (days: number): Attendance => ({ ...attendance, lastCoupon: 100 - days })

  it('are those of an exercise in the middle of it, not of one just reached', () => {
    expect(heldUp(tee, null, attendance)).toBe(false)
    expect(heldUp({ ...tee, begun: true }, null, attendance)).toBe(true)
  })
  it('are those of the exercise a look was asked for, not of another', () => {
    expect(heldUp(tee, 'tee', attendance)).toBe(true)
    expect(heldUp(tee, 'lap', attendance)).toBe(false)
  })
  it('are whichever comes next once a week went by without a coupon', () => {
    expect(UNSIGNED_DAYS).toBe(7)
    expect(heldUp(tee, null, idle(6))).toBe(false)
    expect(heldUp(tee, null, idle(7))).toBe(true)
  })
  it('count the week from the day the student joined, and not before the term began', () => {
    expect(heldUp(tee, null, { ...attendance, lastCoupon: null, joined: 94 })).toBe(false)
    expect(heldUp(tee, null, { ...attendance, lastCoupon: null, joined: 93 })).toBe(true)
    expect(heldUp(tee, null, { ...attendance, lastCoupon: 20, termStarts: 94 })).toBe(false)
    expect(heldUp(tee, null, { ...attendance, lastCoupon: 20, termStarts: 93 })).toBe(true)
  })
})

import { describe, expect, it } from 'vitest'
import { blockingRules } from '@/lib/readiness/blocking'
import { couponsFromRecords } from '@/lib/readiness/coupons-from-records'
import { selfTrust, type ComparedVerdicts } from '@/lib/readiness/self-trust'
import type { Rule } from '@/lib/criteria/types'
import { inspected, record, scored } from './made-up-records'

describe('which inspection counts', () => {
  it('the instructor’s leads over the student’s and the second reader’s', () => {
    const { judged } = couponsFromRecords([record(3, inspected('self', { legSize: 2 }), inspected('second', { legSize: 1.5 }), inspected('instructor', { legSize: 0.4 }))])
    expect(judged[0]).toMatchObject({ index: 0, worstRule: 'leg-size', coupon: { day: 3, accepted: true, worstMargin: 0.4, attributesGood: true } })
    expect(judged[0]?.lead.by).toBe('instructor')
  })

  it('a later inspection of the same person replaces an earlier one', () => {
    const { judged } = couponsFromRecords([record(0, inspected('instructor', { legSize: 0.4 }), inspected('instructor', { legSize: 0.7 }))])
    expect(judged[0]?.coupon.worstMargin).toBe(0.7)
  })

  it('the second reader’s counts where the instructor’s is incomplete', () => {
    const { judged } = couponsFromRecords([record(0, inspected('instructor', { crack: null }), inspected('second', { legSize: 0.2 }))])
    expect(judged[0]?.lead.by).toBe('second')
  })

  it('says where two readers differ', () => {
    const { judged } = couponsFromRecords([
      record(0, inspected('instructor', {}), inspected('second', { legSize: -1 })),
      record(1, inspected('instructor', {}), inspected('second', {})),
      record(2, inspected('instructor', {})),
    ])
    expect(judged.map(({ readersDiffer }) => readersDiffer)).toEqual([true, false, null])
  })
})

describe('what falls back to pass or fail', () => {
  it('a reject with something not measured: the margin is withheld', () => {
    const { judged } = couponsFromRecords([record(0, inspected('instructor', { legSize: -1, crack: null }))])
    expect(judged[0]).toMatchObject({ coupon: { day: 0, accepted: false }, verdictOnly: true })
    expect(judged[0]?.coupon).not.toHaveProperty('worstMargin')
    expect(judged[0]?.coupon).not.toHaveProperty('attributesGood')
  })

  it('an inspector’s own verdict against the scorecard', () => {
    const { judged } = couponsFromRecords([record(0, inspected('instructor', { legSize: -0.1 }, { stated: 'accept' }))])
    expect(judged[0]?.coupon).toEqual({ day: 0, accepted: true })
  })

  it('an inspector’s own verdict where something was not measured', () => {
    const { judged } = couponsFromRecords([record(0, inspected('instructor', { crack: null }, { stated: 'accept' }))])
    expect(judged[0]?.coupon).toEqual({ day: 0, accepted: true })
  })

  it('but not a stated verdict that repeats the scorecard’s', () => {
    const { judged } = couponsFromRecords([record(0, inspected('instructor', { legSize: 0.3 }, { stated: 'accept' }))])
    expect(judged[0]?.coupon.worstMargin).toBe(0.3)
  })
})

describe('what is left out', () => {
  it('coupons nobody inspected, nobody decided, or only the student saw', () => {
    const { judged, leftOut } = couponsFromRecords([
      record(0), record(1, inspected('instructor', { legSize: null })), record(2, inspected('self', {})), record(3, inspected('instructor', {})),
    ])
    expect(judged.map(({ index }) => index)).toEqual([3])
    expect(leftOut).toEqual([{ index: 0, because: 'not-inspected' }, { index: 1, because: 'incomplete' }, { index: 2, because: 'self-only' }])
  })

  it('everything, when nothing was measured: no coupons, not zeros', () => {
    const { judged } = couponsFromRecords([0, 1, 2].map((day) => record(day, inspected('instructor', { legSize: null, legBalance: null, crack: null }))))
    expect(judged).toEqual([])
  })
})

describe('how far a student’s own inspections count', () => {
  const pairs = (agreed: number, tooKind: number, tooStrict = 0): ComparedVerdicts[] => [
    ...Array.from({ length: agreed }, () => ({ self: 'accept', instructor: 'accept' }) as const),
    ...Array.from({ length: tooKind }, () => ({ self: 'accept', instructor: 'reject' }) as const),
    ...Array.from({ length: tooStrict }, () => ({ self: 'reject', instructor: 'accept' }) as const),
  ]

  // (agreed + 1) / (compared + 2) twice less 1, by hand
  it.each([
    ['four agreed of four: too few to tell', 4, 0, 0],
    ['five of five', 5, 0, 5 / 7],
    ['eight of ten', 8, 2, 0.5],
    ['five of ten: a coin', 5, 5, 0],
    ['none of ten', 0, 10, 0],
    ['98 of 98', 98, 0, 0.98],
  ])('%s', (_, agreed, differed, weight) => expect(selfTrust(pairs(agreed, differed)).weight).toBeCloseTo(weight, 12))

  it('says which way the student errs', () => {
    expect(selfTrust(pairs(6, 3, 1))).toMatchObject({ compared: 10, agreed: 6, tooKind: 3, tooStrict: 1, minimum: 5 })
  })

  it('is learnt from coupons both judged, and given to those only the student did', () => {
    const both = Array.from({ length: 10 }, (_, day) => record(day, inspected('self', { legSize: day < 8 ? 0.5 : -0.5 }), inspected('instructor', { legSize: 0.6 })))
    const { judged, trust } = couponsFromRecords([...both, record(10, inspected('self', { legSize: 0.9 }))])
    expect(trust).toMatchObject({ compared: 10, agreed: 8, tooStrict: 2, weight: 0.5 })
    expect(judged.at(-1)?.coupon).toEqual({ day: 10, accepted: true, worstMargin: 0.9, attributesGood: true, weight: 0.5 })
    expect(judged[0]?.coupon).not.toHaveProperty('weight')
  })
})

describe('what blocks a test', () => {
  const source = { title: 'made up for this test', clause: null, status: 'common-practice' } as const
  const rules: Rule[] = [
    { id: 'crack', kind: 'absent', of: ['crack', 'crater-crack'], source, weight: 1, readiness: { as: 'attribute' } },
    { id: 'leg-size', kind: 'reading-range', reading: 'shortest-leg', min: { form: 'fixed', mm: 8 }, max: null, source, weight: 1, readiness: { as: 'margin', scale: 1 } },
  ]
  it('a rejected rule on cracks', () => expect(blockingRules(scored({ crack: 'reject' }), { rules })).toEqual(['crack']))
  it('not a short leg', () => expect(blockingRules(scored({ legSize: -1 }), { rules })).toEqual([]))
  it('not a crack nobody looked for', () => expect(blockingRules(scored({ crack: null }), { rules })).toEqual([]))
})

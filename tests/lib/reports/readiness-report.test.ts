import { describe, expect, it } from 'vitest'
import { couponsFromRecords } from '@/lib/readiness/coupons-from-records'
import { evidenceRows, leftOutCounts, notMeasuredRules } from '@/lib/reports/readiness-report'
import { inspected, record } from '../readiness/made-up-records'

const reader = { locale: 'en', units: 'mm' } as const
/** 2026-11-20, as days since 1970-01-01. */
const DAY = Date.UTC(2026, 10, 20) / 86_400_000

describe('the coupons a readiness estimate used', () => {
  it('stand with their number, date, inspector, verdict, closest rule and its margin', () => {
    const { judged } = couponsFromRecords([record(DAY, inspected('instructor', { legSize: 0.8, legBalance: 0.4 }))])
    expect(evidenceRows(judged, 3, reader)).toEqual([{
      number: 3, date: 'Nov 20, 2026', by: 'instructor', verdict: 'accept', verdictWord: 'Accept',
      closest: { rule: 'Leg balance', margin: expect.any(String) as string, scaled: '+0.40' }, yesNo: 'all met',
    }])
  })

  it('keep their numbers where others between them were left out', () => {
    const records = [record(DAY, inspected('instructor', {})), record(DAY), record(DAY + 1, inspected('second', { legSize: -1.2 }))]
    const { judged, leftOut } = couponsFromRecords(records)
    expect(evidenceRows(judged, 1, reader).map(({ number, by, verdict }) => [number, by, verdict])).toEqual([[1, 'instructor', 'accept'], [3, 'second reader', 'reject']])
    expect(leftOutCounts(leftOut)).toEqual({ 'not-inspected': 1, incomplete: 0, 'self-only': 0 })
  })

  it('write a margin outside with a minus, and a failed yes/no rule as not met', () => {
    const { judged } = couponsFromRecords([record(DAY, inspected('instructor', { legSize: -1.2, crack: 'reject' }))])
    expect(evidenceRows(judged, 1, reader)[0]).toMatchObject({ closest: { rule: 'Leg size', scaled: '−1.20' }, yesNo: 'not all met' })
  })

  it('say how much a student’s own look counts', () => {
    const pairs = Array.from({ length: 8 }, (_, i) => record(DAY + i, inspected('self', {}), inspected('instructor', {})))
    const { judged } = couponsFromRecords([...pairs, record(DAY + 9, inspected('self', {}))])
    // 8 of 8 agreed: weight 2 · 9/10 − 1 = 0.8.
    expect(evidenceRows(judged, 1, reader).at(-1)?.by).toBe('student, weight 0.80')
  })

  it('leave the margin open where the verdict alone counts: it is not 0', () => {
    const { judged } = couponsFromRecords([record(DAY, inspected('instructor', { legSize: null, legBalance: -0.5 }))])
    expect(evidenceRows(judged, 1, reader)[0]).toMatchObject({ verdict: 'reject', closest: null, yesNo: '–' })
  })
})

it('names what was not measured, by how many coupons it was not measured on', () => {
  const { judged } = couponsFromRecords([
    record(DAY, inspected('instructor', { legSize: null, legBalance: -0.5 })), record(DAY, inspected('instructor', { legSize: null, crack: 'reject' })),
    record(DAY, inspected('instructor', { crack: null, legBalance: -1 })), record(DAY, inspected('instructor', {})),
  ])
  expect(notMeasuredRules(judged)).toEqual([{ rule: 'leg-size', coupons: 2 }, { rule: 'crack', coupons: 1 }])
})

it('counts an incomplete coupon and one only its student looked at as left out, each by its reason', () => {
  const { leftOut } = couponsFromRecords([record(DAY, inspected('instructor', { legSize: null })), record(DAY, inspected('self', {})), record(DAY)])
  expect(leftOutCounts(leftOut)).toEqual({ 'not-inspected': 1, incomplete: 1, 'self-only': 1 })
})

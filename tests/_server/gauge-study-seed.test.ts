// The gauge studies of the invented school: a closed one that says something, and an open one that waits for its instructor.
import { beforeAll, describe, expect, it } from 'vitest'
import { gaugeFigures } from '@/lib/reports/gauge-study-figures'
import { nextTurn } from '@/lib/reports/gauge-study-order'
import { gaugeWords } from '@/lib/reports/gauge-study-words'
import { INSTRUCTORS } from '@/prisma/seed/people'
import type { Rows } from '@/prisma/seed/rows'
import { invent } from '@/prisma/seed/seed-database'

const asOf = new Date('2026-11-25T18:40:00Z')
const hashes = { student: 'x', instructor: 'x', coordinator: 'x' }

describe('the studies of the small school', () => {
  let rows: Rows
  beforeAll(() => {
    rows = invent({ asOf, small: true }, hashes)
  }, 120_000)

  const personOf = (process: keyof typeof INSTRUCTORS) => rows.Person.find(({ signInName }) => signInName === INSTRUCTORS[process].signInName)?.id ?? ''
  function study(closed: boolean) {
    const found = rows.GaugeStudy.find(({ closedAt }) => (closedAt !== null) === closed)
    if (!found) throw new Error('The invented school has no such study.')
    const couponIds = rows.GaugeStudyCoupon.filter(({ studyId }) => studyId === found.id).sort((a, b) => a.sequence - b.sequence).map(({ couponId }) => couponId)
    return { plan: { id: found.id, rounds: found.rounds, couponIds }, createdAt: found.createdAt, readings: rows.StudyReading.filter(({ studyId }) => studyId === found.id) }
  }

  it('name the reader who reads too wide, over ten coupons that three have read', () => {
    const { plan, readings } = study(true)
    expect([plan.couponIds.length, readings.length]).toEqual([10, 60])
    const people = rows.Person.filter(({ id }) => readings.some(({ readerId }) => readerId === id)).map(({ id, familyName: name }) => ({ id, name }))
    const figures = gaugeFigures(plan, people, readings, null)
    if (figures.kind === 'none') throw new Error(figures.why)
    expect(gaugeWords(figures, 'in').join(' ')).toMatch(new RegExp(`one reader against another.*${INSTRUCTORS['FCAW-G'].family} reads 0\\.01\\d in wider`))
  })

  it('wait for the fourth reading of the class’s own instructor, with another who has read everything', () => {
    const { plan, readings } = study(false)
    const own = readings.filter(({ readerId }) => readerId === personOf('FCAW-S'))
    expect(own).toHaveLength(3)
    expect(nextTurn(plan, personOf('FCAW-S'), own)).not.toBeNull()
    expect(readings.filter(({ readerId }) => readerId === personOf('FCAW-G'))).toHaveLength(plan.couponIds.length * plan.rounds)
  })

  it('read nothing before it was welded and nothing in the future', () => {
    for (const { plan, createdAt, readings } of [study(true), study(false)]) {
      expect(plan.couponIds.length).toBeGreaterThanOrEqual(4)
      for (const coupon of rows.Coupon.filter(({ id }) => plan.couponIds.includes(id))) expect(coupon.receivedAt < createdAt).toBe(true)
      for (const reading of readings) expect(reading.createdAt > createdAt && reading.createdAt < asOf).toBe(true)
    }
  })
})

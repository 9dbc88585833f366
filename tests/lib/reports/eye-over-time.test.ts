import { describe, expect, it } from 'vitest'
import { explainEye } from '@/lib/reports/explain-eye'
import { drawEye, eyeOverTime, type ComparedLook } from '@/lib/reports/eye-over-time'
import type { Verdict } from '@/lib/scoring/types'

const look = (key: number, own: Verdict, theirs: Verdict, offMm: number | null = null): ComparedLook => ({
  key: String(key),
  own: { verdict: own, widths: offMm === null ? [] : [{ atMm: 20, widthMm: 8 + offMm }, { atMm: 60, widthMm: 9 + offMm }] },
  theirs: { verdict: theirs, widths: offMm === null ? [] : [{ atMm: 20, widthMm: 8 }, { atMm: 60, widthMm: 9 }, { atMm: 100, widthMm: 20 }] },
})
const mm = { locale: 'en', units: 'mm' } as const

describe('how well a student sees their own welds', () => {
  it('is a share with Wilson’s interval: 9 of 10', () => {
    // 9 of 10 at 95 %: 0.596 to 0.982 (Wilson 1927; worked out by hand from the formula).
    const eye = eyeOverTime([look(0, 'accept', 'reject'), ...Array.from({ length: 9 }, (_, i) => look(i + 1, 'accept', 'accept'))])
    expect(eye).toMatchObject({ compared: 10, agreed: 9, tooKind: 1, tooStrict: 0 })
    expect(eye.agreement?.low).toBeCloseTo(0.596, 3)
    expect(eye.agreement?.high).toBeCloseTo(0.982, 3)
    expect(explainEye(eye, mm)).toEqual([
      'You and your instructor reached the same verdict on 9 of 10 coupons (90 %, between 60 % and 98 %).',
      'Where you differed, you mostly accepted what your instructor rejected.',
      'Widths cannot be compared yet: you both measured them on 0 of the 5 coupons it takes.',
    ])
  })
  it('says not enough yet below five, and does not count what was not finished', () => {
    const eye = eyeOverTime([...Array.from({ length: 4 }, (_, i) => look(i, 'accept', 'accept')), look(4, 'incomplete', 'reject')])
    expect(eye).toMatchObject({ compared: 4, agreement: null })
    expect(eye.points.at(-1)).toMatchObject({ agrees: null })
    expect(explainEye(eye, mm)[0]).toBe('Not enough yet: you and your instructor have both judged 4 of the 5 coupons it takes.')
  })
  it('averages widths over a coupon first, at places both measured', () => {
    // Differences 0.4 0.6 0.5 0.5 0.5: mean 0.5, s = 0.0707, t(4) = 2.776, half-width 0.0878 (by hand).
    const eye = eyeOverTime([0.4, 0.6, 0.5, 0.5, 0.5].map((off, i) => look(i, 'accept', 'accept', off)))
    expect(eye.widthCoupons).toBe(5)
    expect(eye.widthBias?.mean).toBeCloseTo(0.5, 6)
    expect(eye.widthBias?.low).toBeCloseTo(0.412, 3)
    expect(explainEye(eye, mm).at(-1)).toBe('Your widths read 0.5 mm larger than your instructor’s on average (between 0.41 mm and 0.59 mm larger).')
    expect(explainEye(eye, { locale: 'es', units: 'in' }).at(-1)).toMatch(/^Tus anchos salen en promedio .* in más grandes/)
  })
  it('names a direction only where the interval does', () => {
    const even = eyeOverTime([0.5, -0.5, 0.4, -0.4, 0].map((off, i) => look(i, 'accept', 'accept', off)))
    expect(explainEye(even, mm).at(-1)).toMatch(/do not differ clearly/)
    const under = eyeOverTime([-0.5, -0.6, -0.5, -0.5, -0.5].map((off, i) => look(i, 'accept', 'accept', off)))
    expect(explainEye(under, mm).at(-1)).toMatch(/smaller than your instructor’s on average/)
  })
  it('draws larger above and smaller below, and nothing where widths were not measured', () => {
    const eye = eyeOverTime([look(1, 'accept', 'accept', 1), look(2, 'accept', 'reject', -2), look(3, 'accept', 'accept')])
    const drawing = drawEye(eye, { left: 0, right: 100, top: 0, bottom: 40 })
    expect(drawing).toMatchObject({ zeroY: 20, scaleMm: 2, band: null })
    expect(drawing.points.map(({ x, y }) => [x, y])).toEqual([[0, 10], [50, 40], [100, null]])
  })
  it('has nothing to say of nothing', () => expect(eyeOverTime([])).toMatchObject({ compared: 0, agreement: null, widthBias: null, points: [] }))
})

describe('the same told to the student’s staff', () => {
  const told = (looks: readonly ComparedLook[], locale: 'en' | 'es' = 'en') => explainEye(eyeOverTime(looks), { locale, units: 'mm', who: 'other' })
  it('speaks of the student, never to the reader', () => {
    expect(told(Array.from({ length: 5 }, (_, i) => look(i, 'accept', 'reject', 0.5)))).toEqual([
      'The student and the instructor reached the same verdict on 0 of 5 coupons (0 %, between 0 % and 43 %).',
      'Where they differed, the student mostly accepted what the instructor rejected.',
      'The student’s widths read 0.5 mm larger than the instructor’s on average (between 0.5 mm and 0.5 mm larger).',
    ])
    expect(told([])).toEqual(['Not enough yet: student and instructor have both judged 0 of the 5 coupons it takes.', 'Widths cannot be compared yet: both measured them on 0 of the 5 coupons it takes.'])
    expect(told([], 'es')[0]).toMatch(/^Todavía no alcanza: estudiante e instructor/)
  })
})

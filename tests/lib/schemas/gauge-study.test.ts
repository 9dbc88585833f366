import { describe, expect, test } from 'vitest'
import { newStudySchema, studyReadingSchema } from '@/lib/schemas/gauge-study'

const id = (last: number): string => `019cf917-9c00-74fd-a058-${String(last).padStart(12, '0')}`
const typed = { id: id(1), classId: id(2), name: ' Week 14 ', place: '2 in from the start', rounds: '2', couponIds: [id(3), id(4)] }
const problemsOf = (result: { error?: { issues: readonly { path: PropertyKey[]; message: string }[] } | undefined }) =>
  Object.fromEntries((result.error?.issues ?? []).map(({ path, message }) => [path.join('.'), message]))

describe('a new study', () => {
  test('is named with the place where it is read', () => {
    expect(newStudySchema.parse(typed)).toMatchObject({ name: 'Week 14: 2 in from the start', rounds: 2, couponIds: [id(3), id(4)] })
  })

  test('says at the field what is missing or senseless', () => {
    expect(problemsOf(newStudySchema.safeParse({ ...typed, name: ' ', place: '', rounds: '1', couponIds: [id(3), id(3)] }))).toEqual({
      name: 'Type a name, such as “Week 14”.', place: expect.stringContaining('Say where on every coupon') as string,
      rounds: expect.stringContaining('from 2 to 5') as string, couponIds: expect.stringContaining('two coupons at least') as string,
    })
    for (const rounds of ['', '2.5', '6', 'two', '-2', '1e1']) expect(newStudySchema.safeParse({ ...typed, rounds }).success, rounds).toBe(false)
  })
})

describe('a reading', () => {
  const read = (width: string, units: 'in' | 'mm' = 'in') => studyReadingSchema({ locale: 'en', units }).safeParse({ studyId: id(1), couponId: id(3), round: 1, width })

  test('is read as people write widths', () => {
    expect(read('7/16').data?.width).toBeCloseTo(11.1125, 9) // 7/16 of 25.4
    expect(read('11.2 mm').data?.width).toBe(11.2)
    expect(read('11,2', 'mm').data?.width).toBe(11.2)
  })

  test('is refused with a sentence where it is empty, no length, or no bead’s width', () => {
    expect(problemsOf(read(''))).toEqual({ width: 'Fill this in.' })
    expect(problemsOf(read('wide'))).toEqual({ width: '“wide” is not a length. Write it like 5/16, .312 or 8 mm.' })
    expect(problemsOf(read('1/64'))).toEqual({ width: 'No bead is that narrow. Read it again, toe to toe.' })
    expect(problemsOf(read('7'))).toEqual({ width: expect.stringContaining('is more than this weld could have') as string })
  })
})

import { describe, expect, it } from 'vitest'
import { commentSchema } from '@/lib/schemas/comment'
import { couponKey, couponSchema, type CouponForm } from '@/lib/schemas/coupon'
import { textField, tidyText } from '@/lib/schemas/field'
import { inspectionKey, inspectionSchema } from '@/lib/schemas/inspection'
import { blankPass } from '@/lib/schemas/passes'
import { blankReadings } from '@/lib/schemas/readings'

const NOW = new Date('2026-11-25T18:00:00Z')
const FRAME = { locale: 'en', units: 'in', lengthMm: 203.2, gaugeResolutionMm: 0.79375 } as const
const ID = '01940000-0000-7000-8000-000000000000'
const form = (given: Partial<Record<keyof CouponForm, unknown>> = {}) => ({
  id: ID, classId: ID, exerciseId: ID, weldedAt: '2026-11-25T17:30:00Z', booth: null, note: '', passes: [blankPass()], readings: blankReadings(['4']), ...given,
})
const complaints = (given: Partial<Record<keyof CouponForm, unknown>>): Record<string, string> => {
  const parsed = couponSchema(FRAME, NOW).safeParse(form(given))
  return parsed.success ? {} : Object.fromEntries(parsed.error.issues.map((issue) => [issue.path.join('.'), issue.message]))
}

describe('when a coupon was welded', () => {
  it.each([
    ['a quarter of an hour ahead of the server, as clocks run', '2026-11-25T18:15:00Z', null],
    ['tomorrow, by a clock that is wrong', '2026-11-26T18:00:00Z', null],
    ['366 days ago', '2025-11-24T18:00:00Z', null],
    ['a second more', '2025-11-24T17:59:59Z', 'This is more than a year ago. Ask your instructor to record it.'],
    ['in a zone of its own', '2026-11-25T23:30:00+05:45', null],
  ])('%s', (_what, weldedAt, sentence) => {
    expect(complaints({ weldedAt })).toEqual(sentence === null ? {} : { weldedAt: sentence })
  })

  const welded = (weldedAt: string, sentAt?: string) => {
    const { weldedAt: at, weldedAtAsSent } = couponSchema(FRAME, NOW).parse(form({ weldedAt, ...(sentAt !== undefined && { sentAt }) }))
    return [at.toISOString(), weldedAtAsSent?.toISOString() ?? null]
  }

  it.each([
    ['a clock a day ahead', '2026-11-26T17:20:00Z', '2026-11-26T18:00:00Z'],
    ['a clock a day behind', '2026-11-24T17:20:00Z', '2026-11-24T18:00:00Z'],
    ['a clock that fell back to its first day', '1970-01-01T00:20:00Z', '1970-01-01T01:00:00Z'],
  ])('%s is put right by what it says at sending: forty minutes before now', (_what, weldedAt, sentAt) => {
    expect(welded(weldedAt, sentAt)).toEqual(['2026-11-25T17:20:00.000Z', new Date(weldedAt).toISOString()])
  })

  it('a clock within a quarter of an hour is left alone, and a coupon that waited for days keeps its day', () => {
    expect(welded('2026-11-25T17:30:00Z', '2026-11-25T18:15:00Z')).toEqual(['2026-11-25T17:30:00.000Z', null])
    expect(welded('2026-11-22T17:30:00Z', '2026-11-25T18:00:00Z')).toEqual(['2026-11-22T17:30:00.000Z', null])
  })

  it('what is still ahead of the server is put at now', () => {
    expect(welded('2026-11-26T17:30:00Z')).toEqual(['2026-11-25T18:00:00.000Z', '2026-11-26T17:30:00.000Z'])
    expect(welded('2026-11-26T17:30:00Z', '2026-11-25T18:00:00Z'), 'the clock was put right in between').toEqual(['2026-11-25T18:00:00.000Z', '2026-11-26T17:30:00.000Z'])
  })

  it('is the same moment whatever zone it was sent in', () => {
    expect(couponSchema(FRAME, NOW).parse(form({ weldedAt: '2026-11-25T23:15:00+05:45' })).weldedAt).toEqual(new Date('2026-11-25T17:30:00Z'))
  })

  it.each(['', 'now', '2026-11-25', '2026-11-25T17:30:00', '2026-02-30T10:00:00Z', 20261125, null])('is a moment, not %o', (weldedAt) => {
    expect(Object.keys(complaints({ weldedAt }))).toEqual(['weldedAt'])
  })
})

describe('a coupon', () => {
  it('keeps a note tidied, and no note as none', () => {
    expect(couponSchema(FRAME, NOW).parse(form({ note: '  two\nlines\t\u0000 ' })).note).toBe('two\nlines')
    expect(couponSchema(FRAME, NOW).parse(form({ note: ' \n ' })).note).toBeNull()
  })

  it('has a booth from 1 to 999, or none', () => {
    expect([1, 999, null].map((booth) => Object.keys(complaints({ booth })))).toEqual([[], [], []])
    expect([0, 1000, 1.5, '3', NaN].map((booth) => Object.keys(complaints({ booth })))).toEqual([['booth'], ['booth'], ['booth'], ['booth'], ['booth']])
  })

  it.each(['id', 'classId', 'exerciseId'] as const)('has a real %s', (key) => {
    for (const id of ['', '1', 'x'.repeat(36), `${ID}0`, ID.replace('7000', '0000'), null]) expect(Object.keys(complaints({ [key]: id })), String(id)).toEqual([key])
    expect(couponKey.safeParse({ ...form(), [key]: '1' }).success).toBe(false)
  })

  it('has its parts and no others', () => {
    expect(couponSchema(FRAME, NOW).safeParse({ ...form(), mark: 100 }).success).toBe(false)
    expect(couponKey.parse({ ...form(), mark: 100 }), 'which coupon it is can be read first').toEqual({ id: ID, classId: ID, exerciseId: ID })
  })
})

describe('an inspection', () => {
  const submitted = (given: object = {}) => inspectionSchema(FRAME).safeParse({ couponId: ID, revision: 1, comment: '', readings: blankReadings(['4']), ...given })

  it('has a whole revision from 1', () => {
    expect([1, 2, 1000].map((revision) => submitted({ revision }).success)).toEqual([true, true, true])
    expect([0, -1, 1.5, 1001, '1', null].map((revision) => submitted({ revision }).success)).toEqual([false, false, false, false, false, false])
    expect(inspectionKey.safeParse({ couponId: 'x' }).success).toBe(false)
  })

  it('may come without a comment, and takes one of 4000 characters', () => {
    expect(submitted().data?.comment).toBeNull()
    expect([submitted({ comment: 'x'.repeat(4000) }).success, submitted({ comment: 'x'.repeat(4001) }).success]).toEqual([true, false])
  })
})

describe('a remark', () => {
  it('says something', () => {
    const remark = (body: string) => commentSchema({ locale: 'es', units: 'in' }).safeParse({ couponId: ID, body })
    expect(remark(' Buen cordón. ').data?.body).toBe('Buen cordón.')
    for (const empty of ['', '   ', '\u0000']) expect(remark(empty).error?.issues.map(({ message }) => message)).toEqual(['Llena este espacio.'])
    expect(remark('x'.repeat(4001)).error?.issues.map(({ message }) => message)).toEqual(['Que no pase de 4000 caracteres.'])
  })
})

describe('text', () => {
  it('loses what nobody sees and keeps what they typed', () => {
    expect(tidyText('\u0000a\u0007\u001bb\u007f\tc\nd\r\n')).toBe('ab\tc\nd')
    expect(tidyText(' ñ “toe” ☂ ')).toBe('ñ “toe” ☂')
    expect(textField(FRAME, 3).parse('abc')).toBe('abc')
    expect(textField(FRAME, 3).safeParse('abcd').error?.issues[0]?.message).toBe('Keep it under 3 characters.')
  })
})

import { describe, expect, it } from 'vitest'
import * as z from 'zod'
import { CODE_LETTERS, codeField, joinSchema, newPasswordSchema, preferencesSchema, setupSchema, writeCode } from '@/lib/schemas/person'

const EN = { locale: 'en', units: 'in' } as const
const joining = (given: object = {}) => joinSchema(EN).safeParse({
  code: '7KQM-2XRT', program: null, locale: 'en', givenName: 'Rosa', familyName: 'Quintero', signInName: 'r.quintero', password: 'seven quiet herons wading', ...given,
})
const fields = (parsed: z.ZodSafeParseResult<unknown>): string[] => parsed.error?.issues.map((issue) => issue.path.join('.')) ?? []

describe('a class code', () => {
  it('is written in two groups, and read back however it is typed', () => {
    expect(writeCode('7KQM2XRT')).toBe('7KQM-2XRT')
    for (const typed of ['7KQM-2XRT', '7kqm2xrt', ' 7KQM 2XRT ', '7-K-Q-M-2-X-R-T']) expect(codeField(EN).parse(typed)).toBe('7KQM2XRT')
  })

  it('has no letters that are confused with digits or that spell', () => {
    expect(CODE_LETTERS).not.toMatch(/[AEIOULU01]/)
    expect(new Set(CODE_LETTERS).size).toBe(CODE_LETTERS.length)
  })

  it.each(['', '7KQM-2XR', '7KQM-2XRTT', '7KQM-2XR0', '7KQM-2XRA', '7KQM_2XRT', '٧KQM-2XRT'])('is not %o', (typed) => {
    expect(codeField(EN).safeParse(typed).error?.issues.map(({ message }) => message)).toEqual(['A class code has eight letters and digits, as 7KQM-2XRT.'])
  })
})

describe('a sign-in name', () => {
  it.each([['r.quintero', 'r.quintero'], [' R.Quintero ', 'r.quintero'], ['rq1', 'rq1'], ['rosa@example.org', 'rosa@example.org'], ['r_q-1', 'r_q-1'], ['ｒｏｓａ', 'rosa'], ['x'.repeat(40), 'x'.repeat(40)]])('%o is kept as %o', (typed, kept) => {
    expect(joining({ signInName: typed }).data?.signInName).toBe(kept)
  })

  it.each(['', 'rq', '.rq', 'rq.', 'r q', 'rosa/quintero', 'x'.repeat(41), 'r\u0000q', 'rósa', '<rosa>'])('is not %o', (typed) => {
    expect(fields(joining({ signInName: typed }))).toEqual(['signInName'])
  })
})

describe('a name', () => {
  it.each([['Rosa', 'Rosa'], ['  Rosa\n  Elena ', 'Rosa Elena'], ['O’Hara-Núñez', 'O’Hara-Núñez'], ['陈', '陈'], ['x'.repeat(80), 'x'.repeat(80)], [' '.repeat(100) + 'Li', 'Li']])('%o is kept as %o', (typed, kept) => {
    expect(joining({ givenName: typed }).data?.givenName).toBe(kept)
  })

  it.each(['', '   ', '\u0000', 'x'.repeat(81)])('is not %o', (typed) => {
    expect(fields(joining({ familyName: typed }))).toEqual(['familyName'])
  })
})

describe('joining', () => {
  it('takes no more than it asks for', () => {
    expect(joining().success).toBe(true)
    expect(joining({ role: 'instructor' }).success).toBe(false)
    expect(fields(joining({ locale: 'fr' }))).toEqual(['locale'])
    expect(fields(joining({ program: 'x'.repeat(61) }))).toEqual(['program'])
  })

  it('refuses a password about the person, with names typed in any way', () => {
    expect(fields(joining({ givenName: ' ROSA ', password: 'rosaquintero99!' }))).toEqual(['password'])
  })
})

describe('setting up', () => {
  const setting = (given: object = {}) => setupSchema(EN).safeParse({
    setupCode: ' 7KQM-2XRT ', programName: 'Harbour', timeZone: 'America/Chicago', units: 'si', givenName: 'Ines', familyName: 'Calloway', signInName: 'ines', password: 'seven quiet herons wading', ...given,
  })

  it.each(['America/Chicago', 'Asia/Kathmandu', 'UTC', 'Europe/Madrid'])('takes the time zone %s', (timeZone) => {
    expect(setting({ timeZone }).success).toBe(true)
  })

  it.each(['', 'Mars/Olympus', 'chicago', '\u0000'])('takes no time zone %o', (timeZone) => {
    expect(fields(setting({ timeZone }))).toEqual(['timeZone'])
  })

  it('tidies the code and refuses a password about the program', () => {
    expect(setting().data?.setupCode).toBe('7KQM-2XRT')
    expect(fields(setting({ programName: 'Riverbend Vocational', password: 'riverbend-vocational-1' }))).toEqual(['password'])
    expect(fields(setting({ units: 'imperial' }))).toEqual(['units'])
  })
})

it('replaces a password only by a good one, and leaves the current one to the server', () => {
  const changing = (given: object) => newPasswordSchema({ locale: 'es', units: 'in' }, ['Rosa']).safeParse({ current: '', password: 'seven quiet herons wading', ...given })
  expect(changing({}).success).toBe(true)
  expect(fields(changing({ password: 'rosarosarosa' }))).toEqual(['password'])
  expect(fields(changing({ current: undefined }))).toEqual(['current'])
})

it('knows two languages and two systems of units', () => {
  expect(preferencesSchema.safeParse({ locale: 'es', units: 'si' }).success).toBe(true)
  for (const wrong of [{ locale: 'fr', units: 'us' }, { locale: 'en', units: 'in' }, { locale: 'en' }, { locale: 'en', units: 'us', role: 'coordinator' }]) expect(preferencesSchema.safeParse(wrong).success).toBe(false)
})

// What a student is told at the box when what was typed there cannot be used, in their language, with nothing stored.
import { randomUUID } from 'node:crypto'
import { beforeAll, beforeEach, describe, expect, it, vi } from 'vitest'
import { testDatabase, type TestDatabase } from '../support/database'
import { requestFrom } from '../support/request'
import { countRows } from '../support/rows'
import { buildSchool, cleanReadings, couponForm, type School } from '../support/school'
import { sendCoupon } from '@/app/learn/actions'
import { INDICATION_KINDS } from '@/lib/scoring/types'

vi.mock('next/headers', async () => (await import('../support/request')).headersModule)
vi.mock('react', async (original) => ({ ...(await original<typeof import('react')>()), cache: <T>(work: T): T => work }))

let database: TestDatabase
let school: School
beforeAll(async () => {
  database = await testDatabase()
  school = await buildSchool('north')
})
beforeEach(() => requestFrom({ school, who: 'student' }))

type Form = ReturnType<typeof couponForm>
type Case = { readonly what: string; readonly bad: (form: Form) => unknown; readonly field: string; readonly en: string; readonly es: string }

const clean = cleanReadings()
const station = (form: Form, index: number, boxes: Partial<Form['readings']['stations'][number]>): Form =>
  ({ ...form, readings: { ...form.readings, stations: form.readings.stations.map((row, place) => (place === index ? { ...row, ...boxes } : row)) } })
const indication = (form: Form, boxes: Record<string, unknown>): unknown => ({
  ...form, readings: { ...form.readings, indications: [{ kind: 'undercut', toe: null, at: '4', length: '', depth: '', diameter: '', height: '', ...boxes }] },
})
const pass = (form: Form, boxes: Record<string, unknown>): unknown => ({ ...form, passes: [{ ...form.passes[0], ...boxes }] })
const daysAgo = (days: number): string => new Date(Date.now() - days * 24 * 3600 * 1000).toISOString()

const CASES: readonly Case[] = [
  {
    what: 'a size that is no length', bad: (form) => station(form, 2, { width: 'wide' }), field: 'readings.stations.2.width',
    en: '“wide” is not a length. Write it like 5/16, .312 or 8 mm.', es: '“wide” no es una medida. Escríbela así: 5/16, .312 u 8 mm.',
  },
  {
    what: 'a size below zero', bad: (form) => station(form, 0, { legA: '-1/4' }), field: 'readings.stations.0.legA',
    en: '“-1/4” is not a length. Write it like 5/16, .312 or 8 mm.', es: '“-1/4” no es una medida. Escríbela así: 5/16, .312 u 8 mm.',
  },
  {
    what: 'a size divided by zero', bad: (form) => station(form, 0, { legA: '1/0' }), field: 'readings.stations.0.legA',
    en: '“1/0” is not a length. Write it like 5/16, .312 or 8 mm.', es: '“1/0” no es una medida. Escríbela así: 5/16, .312 u 8 mm.',
  },
  {
    what: 'an absurd size', bad: (form) => station(form, 1, { legB: '14' }), field: 'readings.stations.1.legB',
    en: '14 is more than this weld could have. The most taken here is 2 61/64 in.', es: '14 es más de lo que esta soldadura podría tener. Lo máximo aquí es 2 61/64 in.',
  },
  {
    what: 'a station beyond the weld', bad: (form) => station(form, 4, { at: '8 1/4' }), field: 'readings.stations.4.at',
    en: 'The weld is 8 in long; 8 1/4 is past its end.', es: 'La soldadura mide 8 in de largo; 8 1/4 queda más allá del final.',
  },
  {
    what: 'a station at no place', bad: (form) => station(form, 4, { at: '' }), field: 'readings.stations.4.at', en: 'Fill this in.', es: 'Llena este espacio.',
  },
  {
    what: 'two stations at one place', bad: (form) => station(station(form, 1, { at: '76.2 mm' }), 3, { at: '3' }), field: 'readings.stations.3.at',
    en: 'Another station is already at 3 in.', es: 'Ya hay otra estación en 3 in.',
  },
  {
    what: 'an indication running past the end', bad: (form) => indication(form, { at: '7', length: '1 1/2' }), field: 'readings.indications.0.length',
    en: 'From 7 in this would run past the end of the weld, which is 8 in long.', es: 'Desde 7 in esto pasaría del final de la soldadura, que mide 8 in.',
  },
  {
    what: 'an indication that starts beyond the weld', bad: (form) => indication(form, { at: '9' }), field: 'readings.indications.0.at',
    en: 'The weld is 8 in long; 9 is past its end.', es: 'La soldadura mide 8 in de largo; 9 queda más allá del final.',
  },
  { what: 'an unknown kind of indication', bad: (form) => indication(form, { kind: 'dent' }), field: 'readings.indications.0.kind', en: 'Choose one.', es: 'Elige una opción.' },
  {
    what: 'sixty-one stations', field: 'readings.stations',
    bad: (form) => ({ ...form, readings: { ...clean, stations: Array.from({ length: 61 }, (_, index) => ({ ...clean.stations[0]!, at: `${index} mm` })) } }),
    en: 'That is more than can be kept: at most 60.', es: 'Es más de lo que se puede guardar: como máximo 60.',
  },
  {
    what: 'volts that are no number', bad: (form) => pass(form, { volts: 'hot' }), field: 'passes.0.volts',
    en: '“hot” is not a number with the right unit. Write it like 18.5.', es: '“hot” no es un número con la unidad correcta. Escríbelo así: 18.5.',
  },
  {
    what: 'amps of a slipped point', bad: (form) => pass(form, { amps: '14000' }), field: 'passes.0.amps',
    en: '14000 is more than a welding set gives. The most taken here is 2000 A.', es: '14000 es más de lo que da una máquina de soldar. Lo máximo aquí es 2000 A.',
  },
  {
    what: 'a wire feed of a slipped point, in the unit the reader types', bad: (form) => pass(form, { wireFeed: '9000' }), field: 'passes.0.wireFeed',
    en: '9000 is more than a welding set gives. The most taken here is 2362 in/min.', es: '9000 es más de lo que da una máquina de soldar. Lo máximo aquí es 2362 in/min.',
  },
  {
    what: 'an arc time no clock shows', bad: (form) => pass(form, { arcTime: '1:75' }), field: 'passes.0.arcTime',
    en: '“1:75” is not a number with the right unit. Write it like 1:30.', es: '“1:75” no es un número con la unidad correcta. Escríbelo así: 1:30.',
  },
  {
    what: 'more text in a box than any size takes', bad: (form) => station(form, 0, { width: '1'.repeat(41) }), field: 'readings.stations.0.width',
    en: 'Keep it under 40 characters.', es: 'Que no pase de 40 caracteres.',
  },
  {
    what: 'a place typed at length', bad: (form) => station(form, 0, { at: ' '.repeat(41) }), field: 'readings.stations.0.at',
    en: 'Keep it under 40 characters.', es: 'Que no pase de 40 caracteres.',
  },
  { what: 'a huge note', bad: (form) => ({ ...form, note: 'x'.repeat(100_000) }), field: 'note', en: 'Keep it under 1000 characters.', es: 'Que no pase de 1000 caracteres.' },
  {
    what: 'a coupon of more than a year ago', bad: (form) => ({ ...form, weldedAt: daysAgo(367) }), field: 'weldedAt',
    en: 'This is more than a year ago. Ask your instructor to record it.', es: 'Esto fue hace más de un año. Pide a tu instructor que lo registre.',
  },
]

describe.each(CASES)('$what', ({ bad, field, en, es }) => {
  it.each([['en', en], ['es', es]] as const)('is told at its field in %s, and nothing is stored', async (locale, sentence) => {
    await database.query('update "Person" set locale = $1 where "programId" = $2', [locale, school.programId])
    const answer = await sendCoupon(bad(couponForm(school, randomUUID())))
    expect(answer).toMatchObject({ ok: false, code: 'INVALID', fields: { [field]: sentence } })
    expect(Object.keys(answer.ok ? {} : answer.fields), 'and nothing else is complained about').toEqual([field])
    expect(await countRows(database, school.programId)).toMatchObject({ Coupon: 0, SkillSummary: 0, AuditEvent: 0 })
  })
})

describe('what no form of ours sends', () => {
  it.each([
    ['an extra key', (form: Form) => ({ ...form, verdict: 'accept' })],
    ['an extra key in a station', (form: Form) => station(form, 0, { verdict: 'accept' } as object)],
    ['an extra key in a pass', (form: Form) => pass(form, { mark: '100' })],
    ['a key named after a prototype', (form: Form) => JSON.parse(`${JSON.stringify(form).slice(0, -1)},"__proto__":{"admin":true}}`) as unknown],
    ['a number where text is typed', (form: Form) => pass(form, { amps: 140 })],
    ['null where text is typed', (form: Form) => station(form, 0, { width: null } as object)],
    ['no passes', (form: Form) => ({ ...form, passes: [] })],
    ['an unknown polarity', (form: Form) => pass(form, { polarity: 'DC' })],
    ['readings that are no readings', (form: Form) => ({ ...form, readings: 'clean' })],
    ['stations that are no list', (form: Form) => ({ ...form, readings: { ...form.readings, stations: { 0: form.readings.stations[0] } } })],
    ['an unknown thing looked for', (form: Form) => ({ ...form, readings: { ...form.readings, lookedFor: ['luck'] } })],
    ['a date that is no date', (form: Form) => ({ ...form, weldedAt: 'yesterday' })],
    ['a date without a zone', (form: Form) => ({ ...form, weldedAt: '2026-11-20T10:00:00' })],
    ['booth zero', (form: Form) => ({ ...form, booth: 0 })],
  ])('%s is refused', async (_what, bad) => {
    expect(await sendCoupon(bad(couponForm(school, randomUUID())))).toMatchObject({ ok: false, code: 'INVALID' })
    expect(await countRows(database, school.programId)).toMatchObject({ Coupon: 0, SkillSummary: 0, AuditEvent: 0 })
  })
})

describe('what is odd and still taken', () => {
  it('takes a coupon from tomorrow as welded now, and keeps what the device said in the audit', async () => {
    const form = { ...couponForm(school, randomUUID()), weldedAt: daysAgo(-1) }
    expect(await sendCoupon(form)).toMatchObject({ ok: true })
    const [row] = await database.query<{ weldedAt: Date; receivedAt: Date }>('select "weldedAt", "receivedAt" from "Coupon" where id = $1', [form.id])
    expect(Math.abs(row!.weldedAt.getTime() - row!.receivedAt.getTime())).toBeLessThan(60_000)
    expect(await database.query(`select "after"->>'deviceSaidWeldedAt' as said from "AuditEvent" where "subjectId" = $1`, [form.id])).toEqual([{ said: form.weldedAt }])
  })

  it('takes text with a character no database keeps, without it', async () => {
    const form = couponForm(school, randomUUID())
    expect(await sendCoupon({ ...form, note: 'arc\u0000 wandered', passes: [{ ...form.passes[0], gas: '\u0000' }] })).toMatchObject({ ok: true })
    expect(await database.query('select note, gas from "Coupon" c join "Pass" p on p."couponId" = c.id where c.id = $1', [form.id])).toEqual([{ note: 'arc wandered', gas: null }])
  })

  it('keeps markup in a note as the text it is', async () => {
    const form = { ...couponForm(school, randomUUID()), note: '<script>alert(1)</script> & “toe” ☂ \ud83d' }
    expect(await sendCoupon(form)).toMatchObject({ ok: true })
    expect((await database.query<{ note: string }>('select note from "Coupon" where id = $1', [form.id]))[0]?.note).toMatch(/^<script>alert\(1\)<\/script> & “toe” ☂ .$/u)
  })

  it('takes everything looked for twice as looked for once', async () => {
    const form = couponForm(school, randomUUID())
    expect(await sendCoupon({ ...form, readings: { ...form.readings, lookedFor: [...INDICATION_KINDS, ...INDICATION_KINDS] } })).toMatchObject({ ok: true })
    const [row] = await database.query<{ kinds: string[] }>(`select readings->'inspection'->'lookedFor' as kinds from "Inspection" where "couponId" = $1`, [form.id])
    expect(row?.kinds).toEqual([...INDICATION_KINDS])
  })
})

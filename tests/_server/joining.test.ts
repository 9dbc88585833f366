// Joining a class with its code: only while the code stands, under a name of one's own, with a password worth the name.
import { randomUUID } from 'node:crypto'
import { beforeAll, beforeEach, describe, expect, it, vi } from 'vitest'
import { testDatabase, type TestDatabase } from '../support/database'
import { requestFrom, requestFromAddress, sessionInJar } from '../support/request'
import { buildSchool, viewerOf, type School } from '../support/school'
import { join } from '@/app/(door)/actions'
import { joinOneMore } from '@/app/account/actions'
import { newClassCode } from '@/app/teach/actions'
import { currentViewer } from '@/app/_server/auth/viewer'
import { findClassCode } from '@/app/_server/data/people'

vi.mock('next/headers', async () => (await import('../support/request')).headersModule)
vi.mock('react', async (original) => ({ ...(await original<typeof import('react')>()), cache: <T>(work: T): T => work }))

let database: TestDatabase
let slug: string
let school: School
let code: string
beforeAll(async () => {
  database = await testDatabase()
})
beforeEach(async () => {
  slug = randomUUID()
  school = await buildSchool(slug)
  requestFromAddress(slug)
  await requestFrom({ school, who: 'instructor' })
  const made = await newClassCode({ classId: school.classId })
  code = made.ok ? made.value.code : ''
  await requestFrom(null)
})

const form = (given: Record<string, unknown> = {}) => ({
  code, program: slug, locale: 'en', givenName: 'Rosa', familyName: 'Quintero', signInName: 'r.quintero', password: 'seven quiet herons wading', ...given,
})
const people = async (): Promise<number> => (await database.query('select 1 as row from "Person" where "programId" = $1', [school.programId])).length
const enrolment = async (personId: string, classId = school.classId) =>
  (await database.query('select booth, "withdrawnAt" from "Enrolment" where "classId" = $1 and "personId" = $2', [classId, personId]))[0]
const noClass = { ok: false, code: 'INVALID', fields: { code: expect.stringContaining('opens no class') } }

describe('a newcomer with the code', () => {
  it('gets an account as a student of that class, and is signed in', async () => {
    expect(await join(form())).toEqual({ ok: true, value: {} })
    const viewer = await currentViewer()
    expect(viewer).toMatchObject({ programId: school.programId, roles: ['student'], name: 'Rosa Quintero', locale: 'en', units: 'in' })
    expect(await enrolment(viewer!.personId)).toEqual({ booth: null, withdrawnAt: null })
    expect(await database.query('select action, "subjectId" from "AuditEvent" where "actorId" = $1', [viewer!.personId])).toEqual([{ action: 'class.join', subjectId: school.classId }])
  })

  it('reads on in the language chosen, in the units of the program', async () => {
    await database.query(`update "Program" set units = 'si' where id = $1`, [school.programId])
    await join(form({ locale: 'es' }))
    expect(await currentViewer()).toMatchObject({ locale: 'es', units: 'mm' })
  })

  it('is forgiven how the code and the names are typed', async () => {
    expect(await join(form({ code: ` ${code.toLowerCase().replace('-', ' ')} `, signInName: ' R.Quintero ', givenName: '  Rosa   Elena ' }))).toMatchObject({ ok: true })
    expect(await currentViewer()).toMatchObject({ name: 'Rosa Elena Quintero' })
    expect(await database.query('select "signInName" from "Person" where "givenName" = \'Rosa Elena\' and "programId" = $1', [school.programId])).toEqual([{ signInName: 'r.quintero' }])
  })

  it('gets one account when the form is sent twice at the same moment', async () => {
    const answers = await Promise.all([join(form()), join(form())])
    expect(answers.filter(({ ok }) => ok)).toHaveLength(1)
    expect(answers.find(({ ok }) => !ok)).toMatchObject({ fields: { signInName: 'This sign-in name is taken. Add a number or a middle initial.' } })
    expect(await people()).toBe(7)
  })
})

describe('without a code that stands', () => {
  const refused = async (given: Record<string, unknown> = {}): Promise<void> => {
    expect(await join(form(given))).toMatchObject(noClass)
    expect(await people()).toBe(6)
    expect(await sessionInJar()).toBeNull()
  }

  it('a newcomer is refused: a wrong one', () => refused({ code: code.replace(/^./, (first) => (first === '2' ? '3' : '2')) }))

  it('a newcomer is refused: an expired one', async () => {
    await database.query(`update "ClassCode" set "expiresAt" = now() where "programId" = $1`, [school.programId])
    await refused()
    expect(await findClassCode(await viewerOf(school, 'instructor'), school.classId)).toBeNull()
  })

  it('a newcomer is refused: one replaced by a newer, which works', async () => {
    await requestFrom({ school, who: 'instructor' })
    const newer = await newClassCode({ classId: school.classId })
    await requestFrom(null)
    await refused()
    expect(await join(form({ code: newer.ok ? newer.value.code : '' }))).toMatchObject({ ok: true })
  })

  it('a newcomer is refused: one of an archived class', async () => {
    await database.query('update "Class" set "archivedAt" = now() where id = $1', [school.classId])
    await refused()
  })

  it('a newcomer is refused: one of another program', async () => {
    const foreign = await buildSchool(randomUUID())
    await requestFrom({ school: foreign, who: 'instructor' })
    const made = await newClassCode({ classId: foreign.classId })
    await requestFrom(null)
    await refused({ code: made.ok ? made.value.code : '' })
  })

  it('a newcomer is refused: in a program nobody knows', async () => {
    expect(await join(form({ program: 'nowhere' }))).toMatchObject({ ok: false, code: 'INVALID', fields: { program: expect.any(String) } })
    expect(await join(form({ program: 'no\u0000where' }))).toMatchObject({ ok: false, code: 'INVALID', fields: { program: expect.any(String) } })
  })

  it('guessing stops after twenty from one address, and taken names are no guesses', async () => {
    for (let index = 0; index < 25; index += 1) expect(await join(form({ signInName: 'student' }))).toMatchObject({ fields: { signInName: expect.any(String) } })
    const guesses = await Promise.all(Array.from({ length: 30 }, () => join(form({ code: '2222-2222' }))))
    expect(guesses.map((answer) => (answer.ok ? 'in' : answer.code)).sort()).toEqual([...Array.from({ length: 20 }, () => 'INVALID'), ...Array.from({ length: 10 }, () => 'TOO_MANY')])
    expect(await join(form())).toMatchObject({ ok: false, code: 'TOO_MANY' })
    requestFromAddress('elsewhere')
    expect(await join(form())).toMatchObject({ ok: true })
  })
})

describe('what the form takes', () => {
  it.each([
    ['a taken name', { signInName: 'student' }, 'signInName', 'This sign-in name is taken. Add a number or a middle initial.', 'Este nombre de usuario ya está tomado. Agrega un número o una inicial.'],
    ['a short password', { password: 'weld-weld-weld' }, 'password', 'Use at least 15 characters. Four words in a row are easy to remember and hard to guess.', 'Usa al menos 15 caracteres. Cuatro palabras seguidas son fáciles de recordar y difíciles de adivinar.'],
    ['a password off a list', { password: 'Password-Password' }, 'password', 'This one is on the lists that guessers try first. Choose words that have nothing to do with each other.', 'Está en las listas que se prueban primero. Elige palabras que no tengan nada que ver entre sí.'],
    ['a password that repeats', { password: 'weldweldweldweld' }, 'password', 'This repeats or counts. Choose words that have nothing to do with each other.', 'Se repite o va contando. Elige palabras que no tengan nada que ver entre sí.'],
    ['a password of spaces', { password: ' '.repeat(20) }, 'password', 'This repeats or counts. Choose words that have nothing to do with each other.', 'Se repite o va contando. Elige palabras que no tengan nada que ver entre sí.'],
    ['a password about oneself', { password: 'rosa.quintero.99' }, 'password', 'Leave your name, the school and the program out of it.', 'No uses tu nombre, la escuela ni el programa.'],
    ['a code that cannot be one', { code: '7KQM' }, 'code', 'A class code has eight letters and digits, as 7KQM-2XRT.', 'El código de la clase tiene ocho letras y números, como 7KQM-2XRT.'],
    ['no name', { familyName: '   ' }, 'familyName', 'Fill this in.', 'Llena este espacio.'],
    ['a sign-in name of two letters', { signInName: 'rq' }, 'signInName', 'Use 3 to 40 letters, digits, dots or hyphens, as j.alvarez.', 'Usa de 3 a 40 letras, números, puntos o guiones, como j.alvarez.'],
  ])('is not %s, and says why in both languages', async (_what, given, field, en, es) => {
    expect(await join(form(given))).toMatchObject({ ok: false, code: 'INVALID', fields: { [field]: en } })
    expect(await join(form({ ...given, locale: 'es' }))).toMatchObject({ ok: false, code: 'INVALID', fields: { [field]: es } })
    expect(await people()).toBe(6)
  })

  it('is no role: one cannot join as more than a student', async () => {
    expect(await join(form({ role: 'coordinator' }))).toMatchObject({ ok: false, code: 'INVALID' })
    expect(await people()).toBe(6)
  })
})

describe('a student who has an account', () => {
  const asStudent = (who: 'student' | 'otherStudent') => requestFrom({ school, who })

  it('joins one more class', async () => {
    await asStudent('otherStudent')
    expect(await joinOneMore({ code })).toEqual({ ok: true, value: { classId: school.classId } })
    expect(await enrolment(school.people.otherStudent)).toEqual({ booth: null, withdrawnAt: null })
    expect(await enrolment(school.people.otherStudent, school.otherClassId), 'and stays in the first').toMatchObject({ withdrawnAt: null })
  })

  it('is active again after withdrawing, at the same booth', async () => {
    await database.query('update "Enrolment" set "withdrawnAt" = now() where "personId" = $1', [school.people.student])
    await asStudent('student')
    expect(await joinOneMore({ code })).toMatchObject({ ok: true })
    expect(await enrolment(school.people.student)).toEqual({ booth: 1, withdrawnAt: null })
  })

  it('joins once when the button is pressed three times at the same moment', async () => {
    await asStudent('otherStudent')
    expect((await Promise.all([joinOneMore({ code }), joinOneMore({ code }), joinOneMore({ code })])).map(({ ok }) => ok)).toEqual([true, true, true])
    expect(await database.query('select 1 as row from "Enrolment" where "personId" = $1', [school.people.otherStudent])).toHaveLength(2)
  })

  it('cannot guess codes on', async () => {
    await asStudent('otherStudent')
    for (let index = 0; index < 20; index += 1) expect(await joinOneMore({ code: '2222-2222' })).toMatchObject({ code: 'INVALID' })
    expect(await joinOneMore({ code })).toMatchObject({ ok: false, code: 'TOO_MANY' })
  })
})

// The first visit to an empty database: once, with the code from the log, and never a second time.
import { beforeAll, beforeEach, describe, expect, it, vi } from 'vitest'
import { testDatabase, type TestDatabase } from '../support/database'
import { requestFrom, requestFromAddress, sessionInJar } from '../support/request'
import { setUp } from '@/app/(door)/actions'
import { announceSetup } from '@/app/_server/announce-setup'
import { isSetupCode, setupCode } from '@/app/_server/auth/setup-code'
import { currentViewer } from '@/app/_server/auth/viewer'
import { anyProgram } from '@/app/_server/data/program'
import { allCriteria } from '@/lib/criteria/catalogue'

vi.mock('next/headers', async () => (await import('../support/request')).headersModule)
vi.mock('react', async (original) => ({ ...(await original<typeof import('react')>()), cache: <T>(work: T): T => work }))

let database: TestDatabase
beforeAll(async () => {
  database = await testDatabase()
})
beforeEach(async () => {
  await database.reset()
  await requestFrom(null)
  requestFromAddress('203.0.113.5')
})

const form = (given: Record<string, unknown> = {}) => ({
  setupCode: setupCode(), programName: 'Harbour Trades Centre', timeZone: 'America/Chicago', units: 'us', givenName: 'Ines', familyName: 'Calloway',
  signInName: 'i.calloway', password: 'seven quiet herons wading', ...given,
})
const rows = async (table: string): Promise<number> => (await database.query(`select 1 as row from "${table}"`)).length

describe('the first visit', () => {
  it('makes the program, its criteria and its coordinator, and signs them in', async () => {
    expect(await anyProgram()).toBe(false)
    expect(await setUp(form())).toEqual({ ok: true, value: {} })
    expect(await anyProgram()).toBe(true)
    expect(await database.query('select name, slug, "timeZone", units from "Program"')).toEqual([{ name: 'Harbour Trades Centre', slug: 'harbour-trades-centre', timeZone: 'America/Chicago', units: 'us' }])
    expect(await rows('CriteriaSet')).toBe(allCriteria().length)
    expect(await currentViewer()).toMatchObject({ roles: ['coordinator'], name: 'Ines Calloway', mustChangePassword: false })
    expect(await database.query('select action from "AuditEvent"')).toEqual([{ action: 'program.setup' }])
    const [person] = await database.query<{ passwordHash: string }>('select "passwordHash" from "Person"')
    expect(person?.passwordHash).toMatch(/^\$argon2id\$/)
  })

  it('happens once: a second one is told, and changes nothing', async () => {
    await setUp(form())
    await requestFrom(null)
    expect(await setUp(form({ programName: 'Another', signInName: 'mallory' }))).toMatchObject({ ok: false, code: 'CONFLICT' })
    expect([await rows('Program'), await rows('Person')]).toEqual([1, 1])
    expect(await sessionInJar()).toBeNull()
  })

  it('happens once when five come at the same moment', async () => {
    const answers = await Promise.all(Array.from({ length: 5 }, (_, index) => setUp(form({ signInName: `visitor.${index}` }))))
    expect(answers.map((answer) => (answer.ok ? 'ok' : answer.code)).sort()).toEqual(['CONFLICT', 'CONFLICT', 'CONFLICT', 'CONFLICT', 'ok'])
    expect([await rows('Program'), await rows('Person')]).toEqual([1, 1])
  })
})

describe('its code', () => {
  it('is forgiven spaces, hyphens and small letters', () => {
    const code = setupCode()
    expect(code).toMatch(/^[2-9A-Z]{4}-[2-9A-Z]{4}$/)
    expect(setupCode(), 'and stays the same while the server runs').toBe(code)
    for (const typed of [code, code.toLowerCase(), code.replace('-', ''), ` ${code.replace('-', ' ')} `]) expect(isSetupCode(typed), typed).toBe(true)
    for (const typed of ['', '-', code.slice(0, 8), `${code}2`, code.replace(/.$/, (last) => (last === '2' ? '3' : '2'))]) expect(isSetupCode(typed), typed).toBe(false)
  })

  it('when wrong is told at its field and makes nothing', async () => {
    expect(await setUp(form({ setupCode: 'AAAA-AAAA' }))).toMatchObject({
      ok: false, code: 'INVALID', fields: { setupCode: 'This is not the code in the server’s log. It changes each time the server starts.' },
    })
    expect(await rows('Program')).toBe(0)
  })

  it('cannot be guessed on: after ten wrong ones even the right one waits, from that address only', async () => {
    for (let index = 0; index < 10; index += 1) expect(await setUp(form({ setupCode: 'AAAA-AAAA' }))).toMatchObject({ code: 'INVALID' })
    expect(await setUp(form())).toMatchObject({ ok: false, code: 'TOO_MANY' })
    expect(await rows('Program')).toBe(0)
    requestFromAddress('203.0.113.6')
    expect(await setUp(form())).toMatchObject({ ok: true })
  })

  it('takes the address the server in front added, not one the visitor wrote', async () => {
    for (let index = 0; index < 10; index += 1) {
      requestFromAddress(`198.51.100.${index}, 203.0.113.9`)
      await setUp(form({ setupCode: 'AAAA-AAAA' }))
    }
    expect(await setUp(form())).toMatchObject({ ok: false, code: 'TOO_MANY' })
  })

  it('is printed in the log only while there is no program', async () => {
    const said: string[] = []
    vi.spyOn(process.stdout, 'write').mockImplementation((text) => said.push(String(text)) > 0)
    await announceSetup()
    expect(said.join('')).toContain(`http://localhost:3000/set-up and enter this one-time code: ${setupCode()}`)
    vi.mocked(process.stdout.write).mockRestore()
    await setUp(form())
    said.length = 0
    vi.spyOn(process.stdout, 'write').mockImplementation((text) => said.push(String(text)) > 0)
    await announceSetup()
    vi.mocked(process.stdout.write).mockRestore()
    expect(said.join('')).not.toContain(setupCode())
  })
})

describe('its form', () => {
  it.each([
    ['a time zone nobody keeps', { timeZone: 'Mars/Olympus' }, 'timeZone', 'Choose one.'],
    ['no name', { programName: ' \u0000 ' }, 'programName', 'Fill this in.'],
    ['a name that is too long', { givenName: 'x'.repeat(81) }, 'givenName', 'Keep it under 80 characters.'],
    ['a sign-in name with spaces', { signInName: 'ines calloway' }, 'signInName', 'Use 3 to 40 letters, digits, dots or hyphens, as j.alvarez.'],
    ['a short password', { password: 'too short' }, 'password', 'Use at least 15 characters. Four words in a row are easy to remember and hard to guess.'],
    ['a password about the program', { password: 'Harbour-Trades-Centre-1' }, 'password', 'Leave your name, the school and the program out of it.'],
    ['a password about oneself', { password: 'InesCallowayInes' }, 'password', 'Leave your name, the school and the program out of it.'],
  ])('says at the field what is wrong with %s, and does not count it as a guess', async (_what, given, field, sentence) => {
    for (let index = 0; index < 11; index += 1) {
      expect(await setUp(form(given))).toMatchObject({ ok: false, code: 'INVALID', fields: { [field]: sentence } })
    }
    expect(await setUp(form())).toMatchObject({ ok: true })
  })

  it('keeps names tidy, and makes an address of any name', async () => {
    expect(await setUp(form({ programName: '  École\u0000 de \n Soudure № 1 ', familyName: "O'Hara-Núñez " }))).toMatchObject({ ok: true })
    expect(await database.query('select p.name, p.slug, q."familyName" from "Program" p, "Person" q')).toEqual([{ name: 'École de Soudure № 1', slug: expect.stringMatching(/^[a-z0-9-]+$/), familyName: "O'Hara-Núñez" }])
  })

  it('makes an address even of a name without a single Latin letter', async () => {
    expect(await setUp(form({ programName: '溶接学校' }))).toMatchObject({ ok: true })
    expect(await database.query('select slug from "Program"')).toEqual([{ slug: 'program' }])
  })
})

// Signing in through the school's identity provider: by issuer and subject only, linked once, by someone who is signed in.
import { randomUUID } from 'node:crypto'
import { beforeAll, beforeEach, expect, it, vi } from 'vitest'
import { testDatabase, type TestDatabase } from '../support/database'
import { requestFrom } from '../support/request'
import { buildSchool, type School } from '../support/school'
import { sealSession } from '@/app/_server/auth/cookie'
import { signInWithIdentity } from '@/app/_server/auth/identity'
import { viewerForCookie } from '@/app/_server/auth/viewer'

vi.mock('next/headers', async () => (await import('../support/request')).headersModule)
vi.mock('react', async (original) => ({ ...(await original<typeof import('react')>()), cache: <T>(work: T): T => work }))

const ISSUER = 'https://login.example.edu'
let database: TestDatabase
let school: School
let subject: string
beforeAll(async () => {
  database = await testDatabase()
})
beforeEach(async () => {
  school = await buildSchool(randomUUID())
  subject = randomUUID()
})

const personOf = async (token: Awaited<ReturnType<typeof signInWithIdentity>>) => (token ? ((await viewerForCookie(await sealSession(token)))?.personId ?? null) : null)
const links = () => database.query('select id, "oidcSubject" from "Person" where "programId" = $1 and "oidcSubject" is not null', [school.programId])

it('opens nothing to a stranger', async () => {
  await requestFrom(null)
  expect(await signInWithIdentity(ISSUER, subject)).toBeNull()
  expect(await links()).toEqual([])
})

it('is linked by a person who is signed in, with an audit row, and from then on is that person', async () => {
  await requestFrom({ school, who: 'student' })
  expect(await personOf(await signInWithIdentity(ISSUER, subject))).toBe(school.people.student)
  expect(await links()).toEqual([{ id: school.people.student, oidcSubject: subject }])
  expect(await database.query(`select action, "actorId" from "AuditEvent" where "programId" = $1`, [school.programId])).toEqual([{ action: 'identity.link', actorId: school.people.student }])
  await requestFrom(null)
  expect(await personOf(await signInWithIdentity(ISSUER, subject))).toBe(school.people.student)
  expect(await signInWithIdentity('https://login.other.example', subject), 'the same subject of another issuer is another person').toBeNull()
  expect(await signInWithIdentity(ISSUER, subject.toUpperCase()), 'subjects are compared letter by letter').toBeNull()
})

it('wins over the session that happens to be open in the browser', async () => {
  await requestFrom({ school, who: 'student' })
  await signInWithIdentity(ISSUER, subject)
  await requestFrom({ school, who: 'classmate' })
  expect(await personOf(await signInWithIdentity(ISSUER, subject))).toBe(school.people.student)
  expect(await links()).toEqual([{ id: school.people.student, oidcSubject: subject }])
})

it('does not take the place of an identity that is linked already', async () => {
  await requestFrom({ school, who: 'student' })
  await signInWithIdentity(ISSUER, subject)
  await requestFrom({ school, who: 'student' })
  expect(await signInWithIdentity(ISSUER, 'someone else at the same shared tablet')).toBeNull()
  expect(await links()).toEqual([{ id: school.people.student, oidcSubject: subject }])
})

it('opens nothing to someone disabled, nor after a session that ended', async () => {
  const token = await requestFrom({ school, who: 'student' })
  await database.query('update "SignInSession" set "endedAt" = now() where id = $1', [token?.sessionId])
  expect(await signInWithIdentity(ISSUER, subject)).toBeNull()
  await requestFrom({ school, who: 'student' })
  await signInWithIdentity(ISSUER, subject)
  await database.query('update "Person" set "disabledAt" = now() where id = $1', [school.people.student])
  await requestFrom(null)
  expect(await personOf(await signInWithIdentity(ISSUER, subject))).toBeNull()
  await requestFrom({ school, who: 'student' })
  expect(await signInWithIdentity(ISSUER, randomUUID()), 'a session of someone disabled links nothing').toBeNull()
})

it('is not linked by someone whose password another person chose', async () => {
  await database.query('update "Person" set "mustChangePassword" = true where id = $1', [school.people.student])
  await requestFrom({ school, who: 'student' })
  expect(await signInWithIdentity(ISSUER, subject)).toBeNull()
  expect(await links()).toEqual([])
})

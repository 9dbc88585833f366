// What waits in a class, heard as it changes: the database's notifications, and the streams that pass them on.
import { randomUUID } from 'node:crypto'
import { afterEach, beforeAll, describe, expect, it, vi } from 'vitest'
import { testDatabase, type TestDatabase } from '../support/database'
import { requestFrom } from '../support/request'
import { buildSchool, logAs, viewerOf, type School } from '../support/school'
import { GET } from '@/app/api/events/classes/[classId]/route'
import type { Viewer } from '@/app/_server/auth/viewer'
import { viewerForPerson } from '@/app/_server/auth/viewer'
import { classEvents } from '@/app/_server/class-events'
import { takeCoupon } from '@/app/_server/data/waiting-coupons'
import { answerLook, askForLook } from '@/app/_server/data/look-requests'
import { listQueue, queueState, queueStateNow } from '@/app/_server/data/queue'
import { db } from '@/app/_server/db'
import { listenerCount, listenToClass, type Heard } from '@/app/_server/listen'

vi.mock('next/headers', async () => (await import('../support/request')).headersModule)
vi.mock('react', async (original) => ({ ...(await original<typeof import('react')>()), cache: <T>(work: T): T => work }))

let database: TestDatabase
let school: School
let foreign: School
let instructor: Viewer
let student: Viewer

const closers: (() => void)[] = []
const wait = (ms: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms))
/** Long enough for a notification to arrive, were it sent. */
const QUIET = 600
const here = () => ({ programId: school.programId, classId: school.classId })

beforeAll(async () => {
  database = await testDatabase()
  school = await buildSchool('north')
  foreign = await buildSchool('south')
  instructor = await viewerOf(school, 'instructor')
  student = await viewerOf(school, 'student')
})

afterEach(async () => {
  closers.splice(0).forEach((close) => close())
  await vi.waitFor(() => expect(listenerCount()).toBe(0))
})

/** Listens until the end of the test, and keeps what is heard. */
async function hearing(key = here()): Promise<Heard[]> {
  const heard: Heard[] = []
  closers.push(await listenToClass(key, (what) => heard.push(what)))
  return heard
}

/** An open stream: what has come out of it so far, and its end. */
function readStream(stream: ReadableStream<Uint8Array> | null, abort: AbortController) {
  if (!stream) throw new Error('There is no stream.')
  const out = { text: '', done: false }
  closers.push(() => abort.abort())
  void (async () => {
    for await (const part of stream) out.text += new TextDecoder().decode(part)
    out.done = true
  })()
  return { out, changes: () => [...out.text.matchAll(/event: changed\nid: (\S+)\n/g)].map(([, id]) => id ?? '') }
}

/** A stream of the class for the instructor, as their page would open it. */
async function opened(seen: string | null, beat = 60_000, state = () => queueState(instructor, school.classId)) {
  const abort = new AbortController()
  const stream = await classEvents({ key: here(), seen, state, signal: abort.signal, beat })
  return { ...readStream(stream, abort), abort }
}

const killListener = () => database.query(`select pg_terminate_backend(pid) from pg_stat_activity where application_name = 'toeline listen' and datname = current_database()`)
const listenConnections = async () => (await database.query(`select 1 from pg_stat_activity where application_name = 'toeline listen' and datname = current_database()`)).length

describe('the database tells', () => {
  it('of a coupon once its transaction commits, and only the listeners of its class', async () => {
    const [own, otherClass, otherProgram] = [await hearing(), await hearing({ programId: school.programId, classId: school.otherClassId }), await hearing({ programId: foreign.programId, classId: foreign.classId })]
    await logAs(school, student, randomUUID())
    await vi.waitFor(() => expect(own).toContain('changed'))
    await wait(QUIET)
    expect(otherClass).toEqual([])
    expect(otherProgram).toEqual([])
  })

  it('nothing of a coupon whose transaction is rolled back', async () => {
    const heard = await hearing()
    const couponId = randomUUID()
    await expect(db().$transaction(async (tx) => {
      await tx.coupon.create({ data: {
        programId: school.programId, id: couponId, classId: school.classId, studentId: school.people.student, exerciseId: school.exerciseId, exerciseVersion: 1,
        number: 900, weldedAt: new Date(), waitingSince: new Date(),
      } })
      throw new Error('changed my mind')
    })).rejects.toThrow('changed my mind')
    await wait(QUIET)
    expect(heard).toEqual([])
    expect(await db().coupon.count({ where: { id: couponId } })).toBe(0)
  })

  it('of a coupon taken, and of a look asked for and answered', async () => {
    const couponId = randomUUID()
    await logAs(school, student, couponId)
    const heard = await hearing()
    await takeCoupon(instructor, couponId)
    await vi.waitFor(() => expect(heard).toHaveLength(1))
    const look = await askForLook(student, { classId: school.classId, exerciseId: null, note: 'porosity when I start' })
    await vi.waitFor(() => expect(heard).toHaveLength(2))
    await answerLook(instructor, { lookId: look.id })
    await vi.waitFor(() => expect(heard).toHaveLength(3))
  })

  it('every listener over one connection, which goes with the last of them', async () => {
    const stops = await Promise.all([1, 2, 3].map(() => listenToClass(here(), () => {})))
    expect(listenerCount()).toBe(3)
    expect(await listenConnections()).toBe(1)
    for (const stop of stops) stop()
    stops[0]?.() // said twice it is no harm
    expect(listenerCount()).toBe(0)
    await vi.waitFor(async () => expect(await listenConnections()).toBe(0))
  })

  it('each listener that the connection is lost, and hears again once someone listens anew', async () => {
    const heard = await hearing()
    await killListener()
    await vi.waitFor(() => expect(heard).toEqual(['lost']))
    expect(listenerCount()).toBe(0)
    const again = await hearing()
    await logAs(school, student, randomUUID())
    await vi.waitFor(() => expect(again).toContain('changed'))
    expect(heard).toEqual(['lost'])
  })
})

describe('a stream', () => {
  it('tells that something changed, with the state as its id and none of the data', async () => {
    const before = await queueState(instructor, school.classId)
    const { out, changes } = await opened(before)
    await logAs(school, student, randomUUID())
    await vi.waitFor(() => expect(changes()).toHaveLength(1))
    expect(changes()).toEqual([await queueState(instructor, school.classId)])
    expect(changes()[0]).not.toBe(before)
    expect(out.text.replace(/id: \S+/g, 'id')).toBe('retry: 2000\n\nevent: beat\ndata: open\n\nevent: changed\nid\ndata: changed\n\n')
  })

  it('tells a class that sends all at once only a few times', async () => {
    const { changes } = await opened(await queueState(instructor, school.classId))
    await Promise.all(Array.from({ length: 6 }, () => logAs(school, student, randomUUID())))
    await wait(QUIET)
    expect(changes().length).toBeGreaterThan(0)
    expect(changes().length).toBeLessThan(6)
    expect(changes().at(-1)).toBe(await queueState(instructor, school.classId))
  })

  it('ends when the database connection is killed; whoever comes back is told what happened meanwhile', async () => {
    const seen = await queueState(instructor, school.classId)
    const first = await opened(seen)
    await killListener()
    await vi.waitFor(() => expect(first.out.done).toBe(true))
    await logAs(school, student, randomUUID()) // while nobody listens
    const second = await opened(seen)
    await vi.waitFor(() => expect(second.changes()).toEqual([expect.stringMatching(/^[\w-]{22}$/)]))
    const third = await opened(second.changes()[0] ?? null)
    await vi.waitFor(() => expect(third.out.text).toContain('event: beat'))
    expect(third.changes(), 'nothing happened since').toEqual([])
  })

  it('tells at a beat that a coupon left open too long is free again', async () => {
    const couponId = randomUUID()
    await logAs(school, student, couponId)
    await takeCoupon(instructor, couponId)
    const { changes } = await opened(await queueState(instructor, school.classId), 150)
    vi.spyOn(Date, 'now').mockReturnValue(Date.now() + 16 * 60_000)
    await vi.waitFor(() => expect(changes()).toHaveLength(1))
  })

  it('ends when its client hangs up, and leaves no listener behind', async () => {
    const { out, abort } = await opened(null)
    expect(listenerCount()).toBe(1)
    abort.abort()
    await vi.waitFor(() => expect(out.done).toBe(true))
    expect(listenerCount()).toBe(0)
  })

  it('is not opened for a client that has hung up already', async () => {
    const abort = new AbortController()
    abort.abort()
    const { out } = readStream(await classEvents({ key: here(), seen: null, state: () => Promise.resolve('x'), signal: abort.signal }), abort)
    await vi.waitFor(() => expect(out.done).toBe(true))
    expect(listenerCount()).toBe(0)
  })
})

describe('when the server is asked to stop', () => {
  it('every stream ends, so that nothing keeps it from closing', async () => {
    const { out } = await opened(null)
    const stays = (): void => {} // as the web server's own listener, which ends the process in its time
    process.on('SIGTERM', stays)
    process.emit('SIGTERM')
    process.off('SIGTERM', stays)
    await vi.waitFor(() => expect(out.done).toBe(true))
    expect(listenerCount()).toBe(0)
  })
})

describe('who may hear', () => {
  const request = (abort: AbortController, query = '', headers: Record<string, string> = {}): [Request, { params: Promise<{ classId: string }> }] =>
    [new Request(`http://localhost:3000/api/events/classes/${school.classId}${query}`, { signal: abort.signal, headers }), { params: Promise.resolve({ classId: school.classId }) }]

  it.each(['student', 'otherInstructor', 'coordinator'] as const)('not %s of the same school: it looks as if there were nothing', async (who) => {
    await requestFrom({ school, who })
    const answer = await GET(...request(new AbortController()))
    expect(answer.status).toBe(404)
    expect(listenerCount()).toBe(0)
  })

  it('not an instructor of another school, and nobody who is signed out', async () => {
    await requestFrom({ school: foreign, who: 'instructor' })
    expect((await GET(...request(new AbortController()))).status).toBe(404)
    await requestFrom(null)
    expect((await GET(...request(new AbortController()))).status).toBe(404)
  })

  it('the instructor of the class, with what they saw last by query or by header', async () => {
    await requestFrom({ school, who: 'instructor' })
    const state = await queueState(instructor, school.classId)
    for (const [query, headers, told] of [[`?seen=${state}`, {}, 0], ['?seen=old', {}, 1], ['?seen=old', { 'last-event-id': state ?? '' }, 0], ['', {}, 1]] as const) {
      const abort = new AbortController()
      const answer = await GET(...request(abort, query, headers))
      expect(answer.headers.get('content-type')).toBe('text/event-stream; charset=utf-8')
      expect(answer.headers.get('cache-control')).toBe('no-store, no-transform')
      const { out, changes } = readStream(answer.body, abort)
      await vi.waitFor(() => expect(out.text).toMatch(told === 0 ? /event: beat/ : /event: changed/))
      expect(changes()).toHaveLength(told)
      abort.abort()
    }
  })

  it('no longer whoever was removed from the class, nor a session that has ended, from the next event on', async () => {
    const token = await requestFrom({ school, who: 'instructor' })
    const viewer = await viewerForPerson(school.programId, school.people.instructor, token?.sessionId)
    if (!viewer) throw new Error('The test school has no instructor.')
    const { out } = await opened(await queueState(viewer, school.classId), 60_000, () => queueStateNow(viewer, school.classId))
    const key = { programId: school.programId, classId: school.classId, personId: school.people.instructor }
    await db().classInstructor.delete({ where: { programId_classId_personId: key } })
    await logAs(school, student, randomUUID())
    await vi.waitFor(() => expect(out.done).toBe(true))
    expect(out.text).not.toContain('changed')
    await db().classInstructor.create({ data: key })

    const quiet = await opened(await queueState(viewer, school.classId), 150, () => queueStateNow(viewer, school.classId))
    await vi.waitFor(() => expect(quiet.out.text).toContain('beat'))
    expect(quiet.out.done).toBe(false)
    await db().signInSession.updateMany({ where: { id: token?.sessionId ?? '' }, data: { endedAt: new Date() } })
    await vi.waitFor(() => expect(quiet.out.done).toBe(true)) // at the next beat, without any event
  })

  it('and an open stream does not count as use of the session', async () => {
    const token = await requestFrom({ school, who: 'instructor' })
    const viewer = await viewerForPerson(school.programId, school.people.instructor, token?.sessionId)
    if (!viewer || !token) throw new Error('The test school has no instructor.')
    const anHourAgo = new Date(Date.now() - 60 * 60_000)
    await db().signInSession.updateMany({ where: { id: token.sessionId }, data: { lastSeenAt: anHourAgo } })
    expect(await queueStateNow(viewer, school.classId)).not.toBeNull()
    expect((await db().signInSession.findFirstOrThrow({ where: { id: token.sessionId } })).lastSeenAt).toEqual(anHourAgo)
    await db().signInSession.updateMany({ where: { id: token.sessionId }, data: { lastSeenAt: new Date(Date.now() - 3 * 60 * 60_000) } })
    expect(await queueStateNow(viewer, school.classId)).toBeNull()
  })
})

it('the queue holds coupons and requests in one line, longest waiting first', async () => {
  await db().coupon.updateMany({ where: { classId: school.classId }, data: { waitingSince: null } })
  const couponId = randomUUID()
  const look = await askForLook(await viewerOf(school, 'classmate'), { classId: school.classId, exerciseId: school.exerciseId, note: 'undercut at the top' })
  await logAs(school, student, couponId)
  const queue = await listQueue(instructor, school.classId)
  expect(queue.map(({ kind, id }) => [kind, id])).toEqual([['look', look.id], ['coupon', couponId]])
  expect(queue[0]).toMatchObject({ booth: 2, note: 'undercut at the top', exercise: { id: school.exerciseId } })
  expect(await listQueue(await viewerOf(school, 'otherInstructor'), school.classId)).toEqual([])
})

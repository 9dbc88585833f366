import { describe, expect, it } from 'vitest'
import { drainOutbox, MOST_FAILURES, type OutboxPorts } from '@/lib/outbox/drain-outbox'
import type { OutboxEntry } from '@/lib/outbox/outbox-entry'
import { passingStore } from '@/lib/outbox/passing-store'
import type { SendOutcome } from '@/lib/outbox/send-outcome'
import { entry } from './queued-entry'

const TAKEN: SendOutcome = { kind: 'taken', number: 7 }
const LOST: SendOutcome = { kind: 'unreachable' }
const REFUSED: SendOutcome = { kind: 'refused', code: 'INVALID', message: 'Look again.', fields: { 'readings.stations.0.width': 'Too wide.', 'readings.stations.1.width': 'Too wide.' } }
const photo = (id: string) => ({ id, blob: new Blob(['x']) })

/** A queue whose server answers by script: the outcome for an id, or taken. `log` is everything that was sent, in order. */
function queue(entries: readonly OutboxEntry[], answers: (id: string, time: number) => SendOutcome = () => TAKEN) {
  const store = passingStore(entries)
  const log: string[] = []
  const times = new Map<string, number>()
  const send = (id: string): Promise<SendOutcome> => {
    log.push(id)
    times.set(id, (times.get(id) ?? 0) + 1)
    return Promise.resolve(answers(id, times.get(id) ?? 0))
  }
  const ports: OutboxPorts = { store, sendCoupon: ({ id }) => send(id), sendPhoto: (_entry, { id }) => send(id) }
  return { store, log, drain: (who = 'ana') => drainOutbox(ports, who), left: async () => (await store.list()).map(({ id }) => id) }
}

describe('order', () => {
  it('is the order of logging, each with its photos before the next', async () => {
    const { drain, log, left } = queue([entry('1', { photos: [photo('1a'), photo('1b')] }), entry('2'), entry('3', { photos: [photo('3a')] })])
    expect(await drain()).toBe('empty')
    expect(log).toEqual(['1', '1a', '1b', '2', '3', '3a'])
    expect(await left()).toEqual([])
  })

  it('does not follow the device’s clock, which may jump back', async () => {
    const { drain, log } = queue([entry('1', { createdAt: 5000 }), entry('2', { createdAt: 1000 })])
    await drain()
    expect(log).toEqual(['1', '2'])
  })

  it('takes along what is logged while it is sending', async () => {
    const { store, drain, log } = queue([entry('1')], () => {
      if (log.length === 1) void store.put(entry('2'))
      return TAKEN
    })
    expect(await drain()).toBe('empty')
    expect(log).toEqual(['1', '2'])
  })

  it('fifty go out once each', async () => {
    const ids = Array.from({ length: 50 }, (_, index) => String(index))
    const { drain, log, left } = queue(ids.map((id) => entry(id)))
    await drain()
    expect(log).toEqual(ids)
    expect(await left()).toEqual([])
  })
})

describe('a lost connection', () => {
  it('ends the round with everything kept, and the next round begins with the same coupon', async () => {
    let down = true
    const { drain, log, left, store } = queue([entry('1'), entry('2'), entry('3')], (id) => (down && id === '2' ? LOST : TAKEN))
    expect(await drain()).toBe('unreachable')
    expect(await left()).toEqual(['2', '3'])
    expect((await store.list()).map(({ attempts, state }) => [attempts, state])).toEqual([[1, 'waiting'], [0, 'waiting']])
    down = false
    expect(await drain()).toBe('empty')
    expect(log).toEqual(['1', '2', '2', '3'])
  })

  it('between a coupon and its photos leaves the photos only', async () => {
    let down = true
    const { drain, log, store } = queue([entry('1', { photos: [photo('1a'), photo('1b')] })], (id) => (down && id === '1b' ? LOST : TAKEN))
    expect(await drain()).toBe('unreachable')
    expect(await store.list()).toMatchObject([{ id: '1', number: 7, photos: [{ id: '1b' }] }])
    down = false
    await drain()
    expect(log).toEqual(['1', '1a', '1b', '1b'])
    expect(await store.list()).toEqual([])
  })
})

describe('someone else', () => {
  it('sends only their own, and leaves the others’ as they were', async () => {
    const others = [entry('1'), entry('3')]
    const { drain, log, store } = queue([others[0]!, entry('2', { personId: 'ben' }), others[1]!])
    expect(await drain('ben')).toBe('empty')
    expect(log).toEqual(['2'])
    expect(await store.list()).toEqual(others)
  })

  it.each(['signed-out', 'other-person', 'new-password'] as const)('%s: the queue stops and waits', async (why) => {
    const { drain, log, store } = queue([entry('1'), entry('2')], () => ({ kind: 'held', why }))
    expect(await drain()).toBe(why)
    expect(log).toEqual(['1'])
    expect((await store.list()).map(({ state }) => state)).toEqual(['waiting', 'waiting'])
  })
})

describe('a refused one', () => {
  it('is kept with its reason, and the others go on', async () => {
    const { drain, log, store } = queue([entry('1'), entry('2'), entry('3')], (id) => (id === '2' ? REFUSED : TAKEN))
    expect(await drain()).toBe('empty')
    expect(log).toEqual(['1', '2', '3'])
    expect(await store.list()).toMatchObject([{ id: '2', state: 'refused', refusal: { code: 'INVALID', message: 'Look again.', fields: { 'readings.stations.0.width': 'Too wide.' } } }])
    await drain()
    expect(log, 'it is not sent again by itself').toEqual(['1', '2', '3'])
  })

  it('for its photo keeps the photo and says that the coupon is logged', async () => {
    const { drain, store } = queue([entry('1', { photos: [photo('1a')] })], (id) => (id === '1a' ? REFUSED : TAKEN))
    await drain()
    expect(await store.list()).toMatchObject([{ id: '1', number: 7, state: 'refused', photos: [{ id: '1a' }] }])
  })

  it('that is back in its form is not sent from here', async () => {
    const { drain, log } = queue([entry('1', { state: 'reopened' }), entry('2')])
    await drain()
    expect(log).toEqual(['2'])
  })

  it('thrown away while it is on its way does not come back', async () => {
    const { drain, store } = queue([entry('1')], () => {
      void store.remove('1')
      return LOST
    })
    await drain()
    expect(await store.list()).toEqual([])
  })
})

describe('a server that fails', () => {
  it('is tried again later, and a coupon it always fails on stops holding up the rest', async () => {
    const { drain, log, store } = queue([entry('1'), entry('2')], (id) => (id === '1' ? { kind: 'failed' } : TAKEN))
    for (let round = 1; round < MOST_FAILURES; round += 1) expect(await drain(), `round ${round}`).toBe('failed')
    expect(log).not.toContain('2')
    expect(await drain()).toBe('empty')
    expect(log.filter((id) => id === '1')).toHaveLength(MOST_FAILURES)
    expect(await store.list()).toMatchObject([{ id: '1', state: 'refused', refusal: { code: 'FAILED' } }])
  })
})

import { backoffMs } from '@/lib/outbox/backoff'
import { drainOutbox, type DrainEnd } from '@/lib/outbox/drain-outbox'
import type { OutboxEntry, OutboxStore } from '@/lib/outbox/outbox-entry'
import { passingStore } from '@/lib/outbox/passing-store'
import { forgetDraft } from './draft-of-entry'
import { deviceStore } from './device-store'
import { postCoupon, postPhoto } from './post-entry'
import { tellWorker } from './worker'

const NAME = 'toeline-outbox'

/** The person signed in on this page, as the server said when it drew it. */
export type OutboxPerson = { readonly personId: string; readonly signInName: string; readonly program: string }

/** What the screens show of the queue. A new object whenever something changed. */
export type OutboxState = {
  readonly entries: readonly OutboxEntry[]
  readonly sending: boolean
  /** How the last round ended; null before the first, and from when one gets something through. */
  readonly end: DrainEnd | null
  /** False where the browser keeps nothing once it is closed. */
  readonly lasting: boolean
  /** Coupons that arrived while this page was open: number by id. */
  readonly arrived: ReadonlyMap<string, number | null>
}

export const EMPTY: OutboxState = { entries: [], sending: false, end: null, lasting: true, arrived: new Map() }

let state = EMPTY
let person: OutboxPerson | null = null
let opened: Promise<OutboxStore> | null = null
let round: Promise<DrainEnd> | null = null
let failures = 0
let timer: number | undefined
let channel: BroadcastChannel | null = null
const listeners = new Set<() => void>()

export const outboxState = (): OutboxState => state

export function watchOutbox(listener: () => void): () => void {
  listeners.add(listener)
  return () => void listeners.delete(listener)
}

function show(change: Partial<OutboxState>): void {
  state = { ...state, ...change }
  listeners.forEach((listener) => listener())
}

/** The device's storage, or the page's own memory where there is none. */
function store(): Promise<OutboxStore> {
  opened ??= deviceStore().catch(() => {
    show({ lasting: false })
    return passingStore()
  })
  return opened
}

async function refresh(): Promise<void> {
  show({ entries: await (await store()).list() })
}

async function changed(): Promise<void> {
  await refresh()
  channel?.postMessage('changed')
}

/** Begins for the person signed in here: shows what waits, sends it, and keeps trying at every sign of a connection. */
export function startOutbox(signedIn: OutboxPerson): () => void {
  person = signedIn
  channel = 'BroadcastChannel' in window ? new BroadcastChannel(NAME) : null
  const now = (): void => void sendOutbox()
  const seen = (): void => { if (document.visibilityState === 'visible') now() }
  // Where the page alone holds what waits, the browser asks before it is left.
  const left = (event: BeforeUnloadEvent): void => { if (!state.lasting && state.entries.some((entry) => entry.state === 'waiting')) event.preventDefault() }
  const woken = (event: MessageEvent<{ type?: string } | null>): void => { if (event.data?.type === 'send') now() }
  const online = (): void => {
    failures = 0 // a new connection: what failed on the old one says nothing about it
    now()
  }
  channel?.addEventListener('message', () => void refresh())
  window.addEventListener('online', online)
  window.addEventListener('pageshow', seen)
  window.addEventListener('beforeunload', left)
  document.addEventListener('visibilitychange', seen)
  navigator.serviceWorker?.addEventListener('message', woken)
  void refresh().then(now)
  return () => {
    channel?.close()
    channel = null
    window.removeEventListener('online', online)
    window.removeEventListener('pageshow', seen)
    window.removeEventListener('beforeunload', left)
    document.removeEventListener('visibilitychange', seen)
    navigator.serviceWorker?.removeEventListener('message', woken)
    window.clearTimeout(timer)
    person = null
  }
}

/**
 * Puts a coupon in the queue; photos that an earlier try left with it stay unless new ones come.
 *
 * @throws QuotaExceededError when the device's storage is full
 */
export async function queueEntry(entry: OutboxEntry): Promise<void> {
  const box = await store()
  const standing = (await box.list()).find(({ id }) => id === entry.id)
  await box.put(standing && entry.photos.length === 0 ? { ...entry, photos: standing.photos } : entry)
  void navigator.storage?.persist?.()
  void askToBeWoken()
  await changed()
}

/** Where the browser can, it wakes the worker when the connection is back and no page is open. */
async function askToBeWoken(): Promise<void> {
  try {
    const registration = (await navigator.serviceWorker?.getRegistration()) as (ServiceWorkerRegistration & { sync?: { register(tag: string): Promise<void> } }) | undefined
    await registration?.sync?.register(NAME)
  } catch {
    // Not allowed or not there: the pages send by themselves.
  }
}

/** Sends what waits, now. After a round that is running already, another one takes what was queued too late for it. */
export function sendOutbox(): Promise<DrainEnd> {
  const who = person
  if (!who) return Promise.resolve('empty')
  const mine = round ? round.then((end) => (end === 'empty' ? oneRound(who) : end)) : oneRound(who)
  round = mine
  return mine.finally(() => { if (round === mine) round = null })
}

async function oneRound(who: OutboxPerson): Promise<DrainEnd> {
  window.clearTimeout(timer)
  const box = await store()
  if (!(await box.list()).some((entry) => entry.personId === who.personId && entry.state === 'waiting')) {
    show({ end: 'empty' })
    return 'empty'
  }
  show({ sending: true })
  const end = await locked(() => drainOutbox({
    store: box,
    sendCoupon: postCoupon, sendPhoto: postPhoto,
    arrived: (entry, number) => {
      failures = 0 // what got through ends a row of failures: a hiccup after it is the first one again
      forgetDraft(entry)
      show({ end: null, arrived: new Map([...state.arrived, [entry.id, number]]) })
      void changed()
      // The next form begins with this coupon's settings: so must its copy.
      tellWorker({ type: 'renew', person: who.personId, paths: [entry.about.href] })
    },
  }, who.personId)).catch((): DrainEnd => 'failed') // the device's storage broke off
  show({ sending: false, end })
  await changed()
  failures = end === 'unreachable' || end === 'failed' ? failures + 1 : 0
  if (failures > 0) timer = window.setTimeout(() => void sendOutbox(), backoffMs(failures, Math.random()))
  return end
}

/** One sender at a time over all tabs and the worker; where the browser has no locks, over this page. */
function locked<T>(work: () => Promise<T>): Promise<T> {
  return 'locks' in navigator ? navigator.locks.request(NAME, work) : work()
}

/** Sends a refused one again as it is. */
export async function sendAgain(id: string): Promise<void> {
  await (await store()).update(id, (entry) => ({ ...entry, state: 'waiting', refusal: null, failures: 0 }))
  await changed()
  await sendOutbox()
}

/** Takes an entry back to its form: it is not sent from the queue until the form sends it again. */
export async function reopenEntry(id: string): Promise<void> {
  await (await store()).update(id, (entry) => ({ ...entry, state: 'reopened' }))
  await changed()
}

/** Removes an entry for good: thrown away, or taken over by its form. */
export async function removeEntry(id: string): Promise<void> {
  await (await store()).remove(id)
  await changed()
}

/** An entry as it stands on the device now; undefined when it is gone. */
export const findEntry = async (id: string): Promise<OutboxEntry | undefined> => (await (await store()).list()).find((entry) => entry.id === id)

/** The person whose page this is by now: a page drawn later than its frame may belong to someone who signed in meanwhile. */
export function sendFor(signedIn: OutboxPerson): void {
  if (person?.personId !== signedIn.personId) person = signedIn
}

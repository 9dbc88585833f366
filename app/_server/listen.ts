import 'server-only'
import { Client } from 'pg'
import { env } from './env'
import { log } from './log'

/** 'changed': something that waits in the class may have changed. 'lost': nothing more will be heard; what happened since is unknown. */
export type Heard = 'changed' | 'lost'
export type ClassKey = { readonly programId: string; readonly classId: string }
type Listener = (heard: Heard) => void

const CHANNEL = 'toeline_class'
/** A database that does not answer within this is gone, in milliseconds. */
const PATIENCE = 10_000
/** A connection nobody uses can die unnoticed, so it is asked now and then. */
const PROBE = 30_000

type Ear = { readonly listeners: Map<string, Set<Listener>>; connected: Promise<Client> | null; onShutdown: boolean }
const held = globalThis as { toelineEar?: Ear }
const ear = (): Ear => (held.toelineEar ??= { listeners: new Map(), connected: null, onShutdown: false })

/** The payload the trigger tell_class sends. */
const payloadOf = ({ programId, classId }: ClassKey): string => `${programId} ${classId}`

/**
 * Calls back whenever what waits in a class may have changed, in this process or any other, until the returned function is called.
 * All listeners share one database connection, which is there only while somebody listens. When it is lost each is told once and let go;
 * whoever listens again connects anew.
 *
 * @returns once the database is listening: what commits after that is heard
 * @throws Error when the database cannot be reached
 */
export async function listenToClass(key: ClassKey, listener: Listener): Promise<() => void> {
  const { listeners } = ear()
  closeOnShutdown()
  const payload = payloadOf(key)
  const own: Listener = (heard) => listener(heard)
  const here = listeners.get(payload) ?? new Set<Listener>()
  listeners.set(payload, here.add(own))
  const stop = (): void => {
    const now = listeners.get(payload)
    now?.delete(own)
    if (now?.size === 0) listeners.delete(payload)
    if (listeners.size === 0) hangUp()
  }
  try {
    await connection()
    return stop
  } catch (error) {
    stop()
    throw error
  }
}

/** How many listen in this process. */
export const listenerCount = (): number => [...ear().listeners.values()].reduce((sum, { size }) => sum + size, 0)

function connection(): Promise<Client> {
  const state = ear()
  if (state.connected) return state.connected
  const client = new Client({ connectionString: env().DATABASE_URL, application_name: 'toeline listen', connectionTimeoutMillis: PATIENCE, query_timeout: PATIENCE, keepAlive: true })
  const connected = open(client)
  state.connected = connected
  const probe = setInterval(() => void client.query('SELECT 1').catch(() => gone()), PROBE)
  probe.unref()
  const gone = (): void => {
    clearInterval(probe)
    if (state.connected === connected) lose('the database connection ended')
  }
  client.on('error', gone)
  client.on('end', gone)
  connected.catch(gone)
  return connected
}

async function open(client: Client): Promise<Client> {
  client.on('notification', ({ payload }) => ear().listeners.get(payload ?? '')?.forEach((listener) => listener('changed')))
  await client.connect()
  await client.query(`LISTEN ${CHANNEL}`)
  return client
}

/** Lets everybody go, telling them that they hear nothing more. */
function lose(why: string): void {
  const state = ear()
  const all = [...state.listeners.values()].flatMap((here) => [...here])
  state.listeners.clear()
  hangUp()
  if (all.length > 0) log().info({ listeners: all.length, why }, 'class events are not heard any more')
  for (const listener of all) listener('lost')
}

function hangUp(): void {
  const state = ear()
  const connected = state.connected
  state.connected = null
  void connected?.then((client) => client.end()).catch(() => {})
}

/** An open stream keeps a server from closing, so all are ended when it is asked to stop. */
function closeOnShutdown(): void {
  const state = ear()
  if (state.onShutdown) return
  state.onShutdown = true
  for (const signal of ['SIGTERM', 'SIGINT'] as const) {
    process.once(signal, () => {
      lose('the server is stopping')
      // Someone else's listener ends the process; without one the signal does what it does by itself.
      if (process.listenerCount(signal) === 0) process.kill(process.pid, signal)
    })
  }
}

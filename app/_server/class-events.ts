import 'server-only'
import { listenToClass, type ClassKey } from './listen'

/** Changes that come together are told together, in milliseconds. */
const TOGETHER = 200
/** How often a listener's right to hear is asked again, and the client told that the line is open, in milliseconds. */
export const BEAT = 20_000

type Subscription = {
  readonly key: ClassKey
  /** What the client has seen: the id of the last event it got, or what its page was drawn from. null: nothing yet. */
  readonly seen: string | null
  /** The state of what waits, as the listener may see it now; null when they may not any more. */
  readonly state: () => Promise<string | null>
  readonly signal: AbortSignal
  readonly beat?: number
}

/**
 * Server-sent events about one class: 'changed' with the new state as its id, and 'beat' while nothing happens. They say that something
 * changed, never what. The right to hear is asked before each of them. The stream ends when it is gone, when the database is not heard
 * any more, or when the server stops; a client that comes back with what it saw last is told at once if that is not how things stand.
 *
 * @throws Error when the database cannot be reached
 */
export async function classEvents({ key, seen, state, signal, beat = BEAT }: Subscription): Promise<ReadableStream<Uint8Array> | null> {
  const text = new TextEncoder()
  let told = seen
  let line: ReadableStreamDefaultController<Uint8Array> | null = null
  let timer: NodeJS.Timeout | null = null
  let over = false

  const end = (): void => {
    if (over) return
    over = true
    if (timer) clearTimeout(timer)
    clearInterval(beating)
    signal.removeEventListener('abort', end)
    stop()
    try {
      line?.close()
    } catch {
      // The client hung up first.
    }
  }
  // One look at a time: changes that come while it is under way are looked at after it.
  let looking: Promise<void> = Promise.resolve()
  const look = (quiet: string): void => {
    looking = looking.then(async () => {
      if (over) return
      const now = await state()
      if (over) return
      if (now === null) return end()
      line?.enqueue(text.encode(now === told ? quiet : `event: changed\nid: ${now}\ndata: changed\n\n`))
      told = now
    }).catch(end)
  }
  const stop = await listenToClass(key, (heard) => {
    if (heard === 'lost') return end()
    timer ??= setTimeout(() => {
      timer = null
      look('')
    }, TOGETHER)
  })
  const beating = setInterval(() => look('event: beat\ndata: open\n\n'), beat)
  signal.addEventListener('abort', end)
  if (signal.aborted) end()
  return new ReadableStream<Uint8Array>({
    start(controller) {
      line = controller
      if (over) return controller.close()
      controller.enqueue(text.encode('retry: 2000\n\n'))
      look('event: beat\ndata: open\n\n')
    },
    cancel: end,
  })
}

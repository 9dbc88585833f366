'use client'

import { useRouter } from 'next/navigation'
import { useEffect, useRef, useState } from 'react'
import { Button } from '../ui/button'
import { useHydrated } from '../use-hydrated'

type LiveLineProps = {
  /** Where the events come from. */
  readonly events: string
  /** What the page shows now; the server is told, and says at once if that is not how things stand. */
  readonly state: string
  /** When the page was drawn: '6:42 PM'. */
  readonly asOf: string
  /** The page's own address, for a reader without scripts. */
  readonly address: string
}

/** In milliseconds. `silence`: longer than two beats of the server. `grace`: a line that is back sooner was never gone. */
const TIMES = { together: 300, apart: 2000, silence: 50_000, grace: 4000, firstRetry: 1000, lastRetry: 15_000 } as const

type Line = { readonly kind: 'opening' } | { readonly kind: 'live' } | { readonly kind: 'off'; readonly since: Date; readonly tried: boolean }

/**
 * Keeps the page up to date: draws it anew when the server says that something changed, and says plainly while it hears nothing. A page
 * in the background lets go of the line, and catches up when it is looked at again.
 */
export function LiveLine({ events, state, asOf, address }: LiveLineProps) {
  const router = useRouter()
  const hydrated = useHydrated()
  const [line, setLine] = useState<Line>({ kind: 'opening' })
  const drawn = useRef(state)
  useEffect(() => {
    drawn.current = state
  }, [state])

  useEffect(() => {
    let source: EventSource | null = null
    let heard = new Date()
    let refreshed = 0
    let retry: number = TIMES.firstRetry
    const timers = { retry: 0, refresh: 0, silence: 0, grace: 0 }

    const refreshSoon = (): void => {
      if (timers.refresh !== 0) return
      timers.refresh = window.setTimeout(() => {
        timers.refresh = 0
        if (source === null) return // without a line the page could not be fetched; it catches up with the next one
        refreshed = Date.now()
        router.refresh()
      }, Math.max(TIMES.together, refreshed + TIMES.apart - Date.now()))
    }
    const listen = (): void => {
      window.clearTimeout(timers.silence)
      timers.silence = window.setTimeout(drop, TIMES.silence)
    }
    const onHeard = (): void => {
      heard = new Date()
      retry = TIMES.firstRetry
      window.clearTimeout(timers.grace)
      timers.grace = 0
      setLine({ kind: 'live' })
      listen()
    }
    const close = (): void => {
      source?.close()
      source = null
      window.clearTimeout(timers.silence)
      window.clearTimeout(timers.retry)
    }
    const sayOff = (): void => {
      if (timers.grace === 0) timers.grace = window.setTimeout(() => setLine({ kind: 'off', since: heard, tried: false }), TIMES.grace)
    }
    function drop(): void {
      close()
      sayOff()
      timers.retry = window.setTimeout(open, retry)
      retry = Math.min(2 * retry, TIMES.lastRetry)
    }
    function open(): void {
      close()
      if (document.hidden) return
      source = new EventSource(`${events}?seen=${encodeURIComponent(drawn.current)}`)
      source.addEventListener('beat', onHeard)
      source.addEventListener('changed', () => {
        onHeard()
        refreshSoon()
      })
      source.addEventListener('error', drop)
      listen()
    }
    const onVisible = (): void => (document.hidden ? close() : open())

    open()
    document.addEventListener('visibilitychange', onVisible)
    window.addEventListener('online', open)
    window.addEventListener('offline', drop)
    return () => {
      close()
      for (const timer of Object.values(timers)) window.clearTimeout(timer)
      document.removeEventListener('visibilitychange', onVisible)
      window.removeEventListener('online', open)
      window.removeEventListener('offline', drop)
    }
  }, [events, router])

  async function refresh(since: Date): Promise<void> {
    // Asked for first: without a connection the browser would leave this page for one that says so.
    const reached = await fetch('/api/health/live', { cache: 'no-store' }).then(({ ok }) => ok, () => false)
    if (reached) router.refresh()
    else setLine({ kind: 'off', since, tried: true })
  }

  if (!hydrated) return <p className="flex min-h-12 flex-wrap items-center gap-x-3 text-ink-2">As of {asOf}. <a href={address} className="inline-flex min-h-12 items-center">Show it as it is now</a></p>
  return (
    <div className="flex min-h-12 flex-wrap items-center gap-x-4 gap-y-2">
      <p role="status" className={line.kind === 'off' ? 'font-bold' : 'text-ink-2'}>{sentence(line)}</p>
      {line.kind === 'off' && <Button onClick={() => void refresh(line.since)}>Refresh</Button>}
    </div>
  )
}

const time = (at: Date): string => at.toLocaleTimeString('en-US', { hour: 'numeric', minute: '2-digit' })

function sentence(line: Line): string {
  switch (line.kind) {
    case 'opening': return 'Opening the line to the booths.'
    case 'live': return 'Live: new coupons appear by themselves.'
    case 'off': return `Not live since ${time(line.since)}${line.tried ? '. Still no connection.' : '; press to refresh.'}`
  }
}

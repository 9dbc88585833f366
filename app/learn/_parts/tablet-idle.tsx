'use client'

import { useEffect, useRef, useState } from 'react'
import { say, type Locale } from '@/lib/language/say'
import { tabletIdle } from '@/lib/language/tablet-idle'
import { Button } from '@/app/_components/ui/button'
import { stillHere } from './actions'

/** A little before the server's own five minutes, so that nobody types into a session that is over. */
const IDLE_MS = 4.5 * 60_000
const WARN_MS = 60_000
/** While someone is at work the server hears of it this often. */
const TELL_MS = 20_000
const SIGNS = ['pointerdown', 'keydown', 'input', 'wheel', 'touchmove'] as const

const NAMES = '/tablet'

/** Ends the session and goes to the names by a whole new page: nothing stays in memory. Without a connection the server ends it by itself. */
async function leave(): Promise<void> {
  try {
    await fetch('/api/sign-out', { method: 'POST', redirect: 'manual' })
  } finally {
    window.location.assign(NAMES)
  }
}

/** On a shared tablet: counts down when nobody touches it, says so for a minute, then goes back to the names of the class. */
export function TabletIdle({ locale }: { readonly locale: Locale }) {
  const [left, setLeft] = useState<number | null>(null)
  const last = useRef(0)

  useEffect(() => {
    let told = Date.now()
    let leaving = false
    last.current = Date.now()
    const touched = (): void => {
      last.current = Date.now()
    }
    const check = (): void => {
      const now = Date.now()
      const idle = now - last.current
      if (last.current > told && now - told >= TELL_MS) {
        told = now
        void stillHere({}).catch(() => {}) // without a connection nobody is told; the work goes on
      }
      if (idle >= IDLE_MS && !leaving) {
        leaving = true
        void leave()
      }
      setLeft(idle >= IDLE_MS - WARN_MS ? Math.max(0, Math.ceil((IDLE_MS - idle) / 1000)) : null)
    }
    const timer = window.setInterval(check, 1000)
    for (const sign of SIGNS) window.addEventListener(sign, touched, { passive: true, capture: true })
    // A tablet that slept wakes with its timers late.
    document.addEventListener('visibilitychange', check)
    return () => {
      window.clearInterval(timer)
      for (const sign of SIGNS) window.removeEventListener(sign, touched, { capture: true })
      document.removeEventListener('visibilitychange', check)
    }
  }, [])

  const asked = left !== null
  const stay = useRef<HTMLDivElement>(null)
  // The question takes the keyboard's place, and gives it back when it goes.
  useEffect(() => {
    if (!asked) return
    const before = document.activeElement
    stay.current?.querySelector('button')?.focus()
    return () => { if (before instanceof HTMLElement) before.focus() }
  }, [asked])

  if (left === null) return null
  return (
    <div ref={stay} role="alertdialog" aria-label={say(tabletIdle, locale, 'stillThere')} className="fixed inset-x-0 bottom-0 z-20 border-t-4 border-ink bg-plate p-4">
      <div className="mx-auto flex max-w-3xl flex-wrap items-center justify-between gap-3">
        <p><strong className="font-head text-xl">{say(tabletIdle, locale, 'stillThere')}</strong> <span aria-live="off">{say(tabletIdle, locale, 'backIn', { seconds: left })}</span></p>
        <Button kind="primary" onClick={() => setLeft(null)}>{say(tabletIdle, locale, 'stay')}</Button>
      </div>
    </div>
  )
}

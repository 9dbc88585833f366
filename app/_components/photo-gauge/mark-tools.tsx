'use client'

import { useEffect, useRef, useState } from 'react'
import { photoGauge } from '@/lib/language/photo-gauge'
import { say, type Locale } from '@/lib/language/say'
import { buttonLook } from '../ui/button-look'
import type { MarkingState } from './use-marking'

type Tool = { readonly key: 'undo' | 'earlier' | 'later' | 'finely' | 'zoomIn' | 'zoomOut' | 'left' | 'up' | 'down' | 'right' | 'finelyDone'; readonly sign: string; readonly run: () => void; readonly off?: boolean }

/** One row of tools for the marks; moving one finely takes the same row, so that the photo does not jump. */
export function MarkTools({ locale, state }: { readonly locale: Locale; readonly state: MarkingState }) {
  const [finely, setFinely] = useState(false)
  const row = useRef<HTMLDivElement>(null)
  const before = useRef(finely)
  const { current, marking } = state
  // The button that changed the row is gone with it: the keyboard goes on from the one in its place.
  useEffect(() => {
    if (before.current === finely) return
    before.current = finely
    row.current?.querySelector<HTMLElement>(finely ? 'button' : '[data-tool="finely"]')?.focus()
  }, [finely])
  const tools: readonly Tool[] = finely && current
    ? [
        { key: 'left', sign: '←', run: () => state.nudge(-1, 0) }, { key: 'up', sign: '↑', run: () => state.nudge(0, -1) },
        { key: 'down', sign: '↓', run: () => state.nudge(0, 1) }, { key: 'right', sign: '→', run: () => state.nudge(1, 0) },
        { key: 'finelyDone', sign: '✓', run: () => setFinely(false) },
      ]
    : [
        { key: 'undo', sign: '↶', run: state.undo, off: marking.order.length === 0 },
        { key: 'earlier', sign: '‹', run: () => state.goTo(-1), off: !current }, { key: 'later', sign: '›', run: () => state.goTo(1), off: !current },
        { key: 'finely', sign: '✥', run: () => setFinely(true), off: !current },
        { key: 'zoomOut', sign: '−', run: () => state.zoom(0.5) }, { key: 'zoomIn', sign: '+', run: () => state.zoom(2) },
      ]
  return (
    <div ref={row} className="flex flex-wrap gap-2">
      {tools.map(({ key, sign, run, off = false }) => (
        <button key={key} type="button" data-tool={key} aria-label={say(photoGauge, locale, key)} title={say(photoGauge, locale, key)} disabled={off} onClick={run} className={`${buttonLook('secondary', 'shop', false)} size-12 px-0`}>
          <span aria-hidden="true">{sign}</span>
        </button>
      ))}
    </div>
  )
}

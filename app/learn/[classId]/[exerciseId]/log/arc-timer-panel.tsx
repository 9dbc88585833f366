'use client'

import { useEffect, useState } from 'react'
import { logPad } from '@/lib/language/log-pad'
import { say, type Locale } from '@/lib/language/say'
import { arcSeconds, burningArc, dropArc, stopArc, strikeArc, type ArcTimer } from '@/lib/procedure/arc-timer'
import { formatDuration, parseDuration, seconds } from '@/lib/units/duration'
import { Button } from '@/app/_components/ui/button'
import { Notice } from '@/app/_components/ui/notice'

type Props = {
  readonly locale: Locale
  /** Number of the pass, from 1. */
  readonly pass: number
  readonly timer: ArcTimer
  /** How long the arc would burn on the whole weld at the booth card's slowest travel; null when the card does not say. */
  readonly expectedSeconds: number | null
  /** The arc time box: arcs are added to what stands in it. */
  readonly arcTime: string
  readonly onTimer: (timer: ArcTimer, arcTime: string) => void
}

/** Arc on, arc off. Arcs of a pass add up in its arc time box, where everything stays editable. */
export function ArcTimerPanel({ locale, pass, timer, expectedSeconds, arcTime, onTimer }: Props) {
  const now = useClock(timer.struckAt !== null)
  const arc = now === null ? null : burningArc(timer, now, expectedSeconds)
  const [refused, setRefused] = useState(false)
  const told = (key: Parameters<typeof say<keyof typeof logPad.en>>[2], values: Record<string, string | number> = {}): string => say(logPad, locale, key, values)

  function stop(): void {
    const stopped = stopArc(timer, Date.now())
    const added = (arcSeconds(stopped) ?? 0) - (arcSeconds(timer) ?? 0)
    const before = readTime(arcTime)
    setRefused(before === null)
    if (before !== null) onTimer(stopped, stopped.arcs.length > timer.arcs.length ? formatDuration(seconds(before + added)) : arcTime)
  }

  const counted = arcSeconds(timer)
  return (
    <div role="group" aria-label={told('timerName', { n: pass })} className="grid gap-2">
      {arc?.kind === 'doubtful' ? (
        <Notice kind="problem" word={told('leftRunning', { time: formatDuration(seconds(arc.seconds)) })} live>
          <div className="flex flex-wrap gap-2">
            <Button onClick={() => onTimer(dropArc(timer), arcTime)}>{told('dropArc')}</Button>
            <Button onClick={stop}>{told('keepArc')}</Button>
          </div>
        </Notice>
      ) : arc?.kind === 'clock-set-back' ? (
        <Notice kind="problem" word={told('clockMoved')} live>
          <Button onClick={() => onTimer(dropArc(timer), arcTime)}>{told('dropUnknown')}</Button>
        </Notice>
      ) : (
        <div className="flex flex-wrap items-center gap-x-4 gap-y-2">
          {timer.struckAt === null
            ? <Button onClick={() => onTimer(strikeArc(timer, Date.now()), arcTime)}>{told('strike')}</Button>
            : <Button kind="primary" onClick={stop}>{told('stop')}</Button>}
          {arc && <span className="figures text-xl">{told('burning', { time: formatDuration(seconds(arc.seconds)) })}</span>}
          {counted !== null && <span className="figures text-lg text-ink-2">{told(timer.arcs.length === 1 ? 'oneArc' : 'arcs', { n: timer.arcs.length, time: formatDuration(seconds(counted)) })}</span>}
        </div>
      )}
      {refused && <Notice kind="problem" word={told('notTime')} live>{null}</Notice>}
    </div>
  )
}

/** The moment by the device's clock, each second while `running`; null before the first look at it, and on the server. */
function useClock(running: boolean): number | null {
  const [now, setNow] = useState<number | null>(null)
  useEffect(() => {
    if (!running) return
    const look = (): void => setNow(Date.now())
    const first = window.setTimeout(look)
    const each = window.setInterval(look, 1000)
    document.addEventListener('visibilitychange', look)
    return () => {
      window.clearTimeout(first)
      window.clearInterval(each)
      document.removeEventListener('visibilitychange', look)
    }
  }, [running])
  return running ? now : null
}

/** 0 for an empty box; null for one that holds something else than a time. */
function readTime(text: string): number | null {
  try {
    return text.trim() === '' ? 0 : parseDuration(text)
  } catch {
    return null
  }
}

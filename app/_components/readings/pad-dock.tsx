'use client'

import { logPad } from '@/lib/language/log-pad'
import { say, type Locale } from '@/lib/language/say'
import type { SizePlace } from '@/lib/reports/next-size'
import type { StationBox, TypedStation } from '@/lib/schemas/readings'
import { Button } from '../ui/button'
import type { SizeFrame } from '@/lib/reports/size-frame'
import { SizePad } from './size-pad'

type Place = SizePlace<StationBox>
type Props = {
  readonly locale: Locale
  readonly frame: SizeFrame
  readonly stations: readonly TypedStation[]
  /** The box the pad fills next; null when every size is measured. */
  readonly active: Place | null
  readonly label: (box: StationBox) => string
  /** The device's own keyboard is wanted instead. */
  readonly typing: boolean
  readonly onTyping: (typing: boolean) => void
  readonly onPut: (place: Place, text: string) => void
}

/** The pad at the foot of the screen while the sizes are in view: which size, at which station, and its keys. */
export function PadDock({ locale, frame, stations, active, label, typing, onTyping, onPut }: Props) {
  if (active === null) {
    return (
      <p role="status" className="border-y border-line py-3">
        <span className="block font-head text-xl font-semibold">{say(logPad, locale, 'allDone')}</span>
        <span className="text-ink-2">{say(logPad, locale, 'allDoneText')}</span>
      </p>
    )
  }
  const { station, box } = active
  const question = say(logPad, locale, 'sizeAt', { size: label(box), n: station + 1 })
  const band = frame.pads[box]
  const before = station > 0 ? (stations[station - 1]?.[box] ?? '') : ''
  const at = stations[station]?.at ?? ''
  return (
    <div className="sticky bottom-0 z-10 -mx-4 grid gap-2 border-y-2 border-ink bg-paper px-4 py-3 print:hidden">
      <p role="status" className="flex flex-wrap items-baseline justify-between gap-x-3 leading-tight">
        <span className="font-head text-xl font-semibold">{question}</span>
        {at !== '' && <span className="text-ink-2">{say(logPad, locale, 'from', { at: /\d$/.test(at) ? `${at} ${frame.units}` : at })}</span>}
      </p>
      {band && !typing && (
        <SizePad locale={locale} size={box} label={question} units={frame.units} gauge={frame.gauge} band={band} text={stations[station]?.[box] ?? ''} onPut={(text) => onPut(active, text)} />
      )}
      {band ? (
        <div className="flex flex-wrap gap-2">
          <Button onClick={() => onTyping(!typing)}>{say(logPad, locale, typing ? 'padInstead' : 'typeInstead')}</Button>
          {before !== '' && !typing && <Button onClick={() => onPut(active, before)}>{say(logPad, locale, 'same', { n: station, size: before })}</Button>}
        </div>
      ) : <p className="text-ink-2">{say(logPad, locale, 'typeThis')}</p>}
    </div>
  )
}

'use client'

import { useState } from 'react'
import { logPad } from '@/lib/language/log-pad'
import { say, type Locale } from '@/lib/language/say'
import { isAllowed, type PadBand } from '@/lib/reports/pad-bands'
import { gaugeSteps, type GaugeUnit } from '@/lib/units/gauge-steps'
import { FractionPad } from '../weld/fraction-pad'
import { readSize, withoutUnit } from './read-size'

type Props = {
  readonly locale: Locale
  /** Which size the pad is for; with another one it starts at its own first page. */
  readonly size: string
  readonly label: string
  readonly units: 'in' | 'mm'
  readonly gauge: GaugeUnit
  readonly band: PadBand
  /** What stands in the box now. */
  readonly text: string
  /** Puts a size into the box as it would be typed; '' empties it. */
  readonly onPut: (text: string) => void
}

/** The pad of one size. It stays on the page of sizes it was turned to: the next station's size is rarely far away. */
export function SizePad({ locale, size, label, units, gauge, band, text, onPut }: Props) {
  // Not a pad of its own for each size: the keys stay where they are and only change their figures, which is the quicker answer to a tap.
  const [turned, setTurned] = useState({ size, page: 0 })
  const page = turned.size === size ? turned.page : 0
  const keysOf = (at: number) => gaugeSteps(band.expected, gauge, { page: at, least: band.fromZero ? 0 : 1 })
  const steps = keysOf(page).map((step) => ({ ...step, inside: isAllowed(step.valueMm, band.allowed) }))
  const turn = (by: -1 | 1): void => {
    // The lowest page repeats: turning on from it would have to be turned back.
    if (by === 1 || keysOf(page - 1)[0]?.valueMm !== steps[0]?.valueMm) setTurned({ size, page: page + by })
  }
  return (
    <FractionPad
      locale={locale} label={say(logPad, locale, 'padFor', { size: label })} steps={steps} chosenMm={readSize(text, units)}
      onChoose={(step) => onPut(withoutUnit(step.label))} onClear={() => onPut('')} onPage={turn}
    />
  )
}

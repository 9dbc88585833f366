'use client'

import type { Locale } from '@/lib/language/say'
import { placeText } from '@/lib/reports/ruler'
import { stripSoFar } from '@/lib/reports/strip-so-far'
import type { ReadingsForm } from '@/lib/schemas/readings'
import { StripPicker } from '../weld/strip-picker'
import type { SizeFrame } from '@/lib/reports/size-frame'
import { withoutUnit } from './read-size'

/** Places fall on an eighth of an inch, or 5 mm. */
const STEP_MM = { in: 25.4 / 8, mm: 5 } as const

export type PlacedAt = { readonly at: string; readonly toe: 'A' | 'B' | null }
type Props = { readonly locale: Locale; readonly frame: SizeFrame; readonly value: ReadingsForm; readonly onPlace: (place: PlacedAt) => void }

/** The bead drawn from the sizes so far, to tap where something was seen. */
export function BeadPicker({ locale, frame, value, onPlace }: Props) {
  const strip = stripSoFar(value, { ...frame, widthBand: frame.pads.width?.allowed ?? null }, locale)
  return <StripPicker strip={strip} stepMm={STEP_MM[frame.units]} onPlace={({ atMm, toe }) => onPlace({ at: withoutUnit(placeText(atMm, frame.units)), toe })} />
}

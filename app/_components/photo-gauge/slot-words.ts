import { photoGauge } from '@/lib/language/photo-gauge'
import { say, type Locale } from '@/lib/language/say'
import type { Slot } from '@/lib/measure/marking'
import type { MarkShape } from './mark-drawing'

/** The name of a mark: 'Corner 2 of 4', 'Station 3, one toe'. */
export const slotName = (slot: Slot, locale: Locale): string =>
  say(photoGauge, locale, `mark-${slot.kind}`, 'n' in slot ? { n: slot.n } : 'station' in slot ? { n: slot.station + 1 } : {})

/** How it is set. */
export const slotHow = (slot: Slot, locale: Locale): string => say(photoGauge, locale, `how-${slot.kind}`)

export const shapeOf = (slot: Slot | undefined): MarkShape =>
  slot === undefined || 'station' in slot ? 'toe' : slot.kind === 'start' || slot.kind === 'end' ? 'end' : 'corner'

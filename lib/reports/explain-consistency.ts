import { myProgress } from '../language/my-progress'
import { say, type Locale } from '../language/say'
import { shareText } from './share-text'
import type { WidthConsistency } from './width-consistency'

/** How even the beads are, in a sentence or two spoken to the student. */
export function explainConsistency({ all, halves }: WidthConsistency, locale: Locale): readonly string[] {
  if (!all) return [say(myProgress, locale, 'evenNotYet')]
  const counts = { value: percent(all.value), low: percent(all.low), stations: all.stations, coupons: all.coupons }
  return [
    all.high === null ? say(myProgress, locale, 'evenAllOpen', counts) : say(myProgress, locale, 'evenAll', { ...counts, high: percent(all.high) }),
    ...(halves ? [say(myProgress, locale, `even-${halves.trend}`, { first: percent(halves.first.value), last: percent(halves.last.value) })] : []),
  ]
}

/** A variation may pass the mean itself, which a share may not. */
const percent = (value: number): string => (value <= 1 ? shareText(value) : `${Math.round(value * 100)} %`)

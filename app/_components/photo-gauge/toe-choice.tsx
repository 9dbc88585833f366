'use client'

import { photoGauge } from '@/lib/language/photo-gauge'
import { say, type Locale } from '@/lib/language/say'
import { Button } from '../ui/button'
import type { MarkingState } from './use-marking'

/** Which place of a toe counts, the edge found nearby or the person's own tap, and leaving a station out. */
export function ToeChoice({ locale, state }: { readonly locale: Locale; readonly state: MarkingState }) {
  const { current, currentSlot, slot } = state
  const told = (key: keyof typeof photoGauge.en): string => say(photoGauge, locale, key)
  const toe = current !== null && currentSlot !== undefined && 'station' in currentSlot ? current : null
  const choice = (edge: boolean) => {
    const pressed = toe !== null && (toe.snapped !== null) === edge
    return (
      <Button key={String(edge)} size="shop" kind={pressed ? 'primary' : 'secondary'} aria-pressed={pressed} disabled={toe === null} onClick={() => { if (!pressed) state.swap() }}>
        {told(edge ? 'edge' : 'tap')}
      </Button>
    )
  }
  return (
    <div className="flex flex-wrap gap-2">
      <div role="group" aria-label={told('counts')} className="flex gap-2">{choice(true)}{choice(false)}</div>
      <Button disabled={!(slot && 'station' in slot)} onClick={state.skip}
        aria-label={slot && 'station' in slot ? say(photoGauge, locale, 'skipStation', { n: slot.station + 1 }) : undefined}>{told('skip')}</Button>
    </div>
  )
}

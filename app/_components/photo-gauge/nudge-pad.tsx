'use client'

import { photoGauge } from '@/lib/language/photo-gauge'
import { say, type Locale } from '@/lib/language/say'
import { buttonLook } from '../ui/button-look'

type Way = 'left' | 'right' | 'up' | 'down'
const ARROWS = { up: '↑', left: '←', right: '→', down: '↓' } as const satisfies Record<Way, string>
const PLACE: Readonly<Record<Way, string>> = { up: 'col-start-2 row-start-1', left: 'col-start-1 row-start-2', right: 'col-start-3 row-start-2', down: 'col-start-2 row-start-3' }
const BY: Readonly<Record<Way, readonly [number, number]>> = { left: [-1, 0], right: [1, 0], up: [0, -1], down: [0, 1] }

type Props = { readonly locale: Locale; readonly disabled: boolean; readonly onNudge: (x: number, y: number) => void }

/** Four buttons that move the mark by one fine step. */
export function NudgePad({ locale, disabled, onNudge }: Props) {
  return (
    <div className="grid grid-cols-[repeat(3,3rem)] grid-rows-[repeat(3,3rem)] gap-2">
      {(Object.keys(ARROWS) as Way[]).map((way) => (
        <div key={way} className={`grid ${PLACE[way]}`}>
          <button type="button" aria-label={say(photoGauge, locale, way)} disabled={disabled} onClick={() => onNudge(...BY[way])} className={`${buttonLook('secondary', 'shop', false)} size-12 px-0`}>
            <span aria-hidden="true">{ARROWS[way]}</span>
          </button>
        </div>
      ))}
    </div>
  )
}

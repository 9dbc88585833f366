'use client'

import { useId, useState, type KeyboardEvent, type MouseEvent } from 'react'
import { drawings } from '@/lib/language/drawings'
import { say } from '@/lib/language/say'
import { drawBeadStrip, type BeadStrip, type BeadStripInput } from '@/lib/reports/bead-strip'
import { placeText } from '@/lib/reports/ruler'
import { toeName } from '@/lib/reports/toe-name'
import { Button } from '../ui/button'
import { RadioPills } from '../ui/radio-pills'
import { BeadStripDrawing } from './bead-strip-drawing'

/** A place on the weld: how far from its start, and on which toe; null is on the bead itself. */
export type PickedPlace = { readonly atMm: number; readonly toe: 'A' | 'B' | null }

type StripPickerProps = {
  /** The strip as far as it is known, with the indications already placed. */
  readonly strip: BeadStripInput
  /** Places fall on multiples of this: an eighth of an inch or 5 mm. */
  readonly stepMm: number
  readonly onPlace: (place: PickedPlace) => void
}

/**
 * The drawn bead as a control. A tap on it places at once. By keyboard or with an unsteady hand: the slider moves along the weld, the
 * pills choose a toe or the bead, Enter on the slider or the button places.
 */
export function StripPicker({ strip, stepMm, onPlace }: StripPickerProps) {
  const name = useId()
  const [place, setPlace] = useState<PickedPlace>({ atMm: 0, toe: null })
  const { lengthMm, position } = strip.weld
  const { locale, units } = strip.reader
  const steps = Math.ceil(lengthMm / stepMm - 1e-9)
  const part = place.toe ? toeName(place.toe, position, locale) : say(drawings, locale, 'onBead')
  const words = say(drawings, locale, 'pickPlace', { at: placeText(place.atMm, units), part })

  function tap(event: MouseEvent<HTMLDivElement>, drawn: BeadStrip) {
    const tapped = placeUnder(event, drawn, lengthMm, stepMm)
    setPlace(tapped)
    onPlace(tapped)
  }

  function onSliderKey(event: KeyboardEvent) {
    if (event.key !== 'Enter') return
    event.preventDefault()
    onPlace(place)
  }

  return (
    <div className="@container grid gap-3">
      <p className="text-ink-2">{say(drawings, locale, 'pickHint')}</p>
      {(['narrow', 'wide'] as const).map((size) => {
        const drawn = drawBeadStrip(strip, size)
        return (
          <div key={size} onClick={(event) => tap(event, drawn)} className={`cursor-crosshair touch-manipulation ${size === 'narrow' ? '@xl:hidden' : 'hidden max-w-4xl @xl:block'}`}>
            <BeadStripDrawing strip={drawn} label={drawn.words.description} className="" cursor={cursorAt(place, drawn)} />
          </div>
        )
      })}
      <label className="grid gap-1">
        <span className="font-bold">{say(drawings, locale, 'along')}</span>
        <input
          type="range"
          min={0}
          max={steps}
          step={1}
          value={Math.round(place.atMm / stepMm)}
          aria-valuetext={words}
          onChange={(event) => setPlace({ ...place, atMm: onWeld(Number(event.target.value) * stepMm, lengthMm) })}
          onKeyDown={onSliderKey}
          className="h-12 w-full max-w-4xl accent-ink"
        />
      </label>
      <RadioPills
        legend={say(drawings, locale, 'whichPart')}
        name={name}
        value={place.toe ?? 'bead'}
        onChange={(event) => setPlace({ ...place, toe: toeOf(event.target.value) })}
        pills={[
          { value: 'A', label: <PillWord>{toeName('A', position, locale)}</PillWord> },
          { value: 'bead', label: <PillWord>{say(drawings, locale, 'onBead')}</PillWord> },
          { value: 'B', label: <PillWord>{toeName('B', position, locale)}</PillWord> },
        ]}
      />
      <Button kind="primary" wide onClick={() => onPlace(place)}>
        {say(drawings, locale, 'placeAt', { place: words })}
      </Button>
    </div>
  )
}

function PillWord({ children }: { readonly children: string }) {
  return <span className="inline-block first-letter:uppercase">{children}</span>
}

/** Never off the weld, and without the dust of floating point. */
const onWeld = (atMm: number, lengthMm: number): number => Math.round(Math.min(lengthMm, Math.max(0, atMm)) * 1000) / 1000

const toeOf = (value: string): PickedPlace['toe'] => (value === 'A' || value === 'B' ? value : null)

/** Nearer to a toe than to the middle counts as that toe: a gloved fingertip covers both. */
function placeUnder(event: MouseEvent<HTMLDivElement>, drawn: BeadStrip, lengthMm: number, stepMm: number): PickedPlace {
  const box = event.currentTarget.getBoundingClientRect()
  const scale = drawn.width / box.width
  const alongMm = ((event.clientX - box.left) * scale - drawn.left) / drawn.pxPerMm
  const across = (event.clientY - box.top) * scale - drawn.axisY
  const atMm = onWeld(Math.round(alongMm / stepMm) * stepMm, lengthMm)
  return { atMm, toe: Math.abs(across) < drawn.toeReach / 2 ? null : across < 0 ? 'A' : 'B' }
}

function cursorAt(place: PickedPlace, drawn: BeadStrip): { x: number; y: number } {
  const side = place.toe === 'A' ? -1 : place.toe === 'B' ? 1 : 0
  return { x: drawn.left + place.atMm * drawn.pxPerMm, y: drawn.axisY + side * drawn.toeReach }
}

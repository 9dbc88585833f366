'use client'

import { useState, type FormEvent } from 'react'
import { photoGauge } from '@/lib/language/photo-gauge'
import { say, type Locale } from '@/lib/language/say'
import { NOTHING_TYPED, SCALE_KINDS, type Chosen, type ScaleKind } from '@/lib/measure/chosen-scale'
import { KNOWN_OBJECTS, TYPED_SIZE_SD_MM } from '@/lib/measure/known-objects'
import { requireKnownSize } from '@/lib/measure/known-size'
import type { KnownScale } from '@/lib/measure/marking'
import { parseLength, type LengthUnit } from '@/lib/units/length'
import { Button } from '../ui/button'
import { RadioPills } from '../ui/radio-pills'
import { TextInput } from '../ui/text-input'

type Props = {
  readonly locale: Locale
  readonly units: LengthUnit
  /** The scale chosen before, and whether marks are set under it. */
  readonly before: Chosen | null
  readonly anyMarks: boolean
  readonly onChoose: (chosen: Chosen) => void
}

/** What on the photo has a known size, and that size where it has to be typed. */
export function ScaleChoice({ locale, units, before, anyMarks, onChoose }: Props) {
  const [kind, setKind] = useState<ScaleKind>(before?.choice.kind ?? 'card')
  const [typed, setTyped] = useState(before?.choice.typed ?? NOTHING_TYPED)
  const [tried, setTried] = useState(false)
  const told = (key: keyof typeof photoGauge.en): string => say(photoGauge, locale, key)
  const asked = kind === 'rectangle' ? (['long', 'short'] as const) : kind === 'ruler' ? (['distance'] as const) : []

  function choose(event: FormEvent): void {
    event.preventDefault()
    event.stopPropagation() // the log form stands around this one in React's tree
    setTried(true)
    const scale = scaleOf(kind, asked.map((name) => readKnownSize(typed[name], units)))
    if (scale) onChoose({ scale, choice: { kind, typed } })
  }

  const box = (name: keyof typeof typed, label: string) => (
    <TextInput key={name} figures label={label} hint={told('sizeHint')} value={typed[name]} autoComplete="off"
      error={tried && readKnownSize(typed[name], units) === null ? say(photoGauge, locale, 'notASize', { typed: typed[name] }) : null}
      onChange={(event) => setTyped({ ...typed, [name]: event.target.value })} />
  )
  return (
    <form noValidate onSubmit={choose} className="mx-auto grid w-full max-w-3xl content-start gap-5 overflow-y-auto p-4">
      <RadioPills legend={told('scaleTitle')} name="scale" value={kind} onChange={(event) => { setKind(event.target.value as ScaleKind); setTried(false) }}
        pills={SCALE_KINDS.map((value) => ({ value, label: told(`scale-${value}`), hint: told(`about-${value}`) }))} />
      <p>{told('scaleHint')}</p>
      {asked.map((name) => box(name, told(name === 'long' ? 'longSide' : name === 'short' ? 'shortSide' : 'distance')))}
      {anyMarks && before && <p role="status" className="font-bold">{told((kind === 'ruler') === (before.choice.kind === 'ruler') ? 'marksStay' : 'scaleAnew')}</p>}
      <div><Button kind="primary" type="submit">{told('next')}</Button></div>
    </form>
  )
}

/** A typed size in mm; null when it is none a photo can be measured by. */
function readKnownSize(text: string, units: LengthUnit): number | null {
  try {
    const size = parseLength(text, units)
    requireKnownSize(size, 'The known size')
    return size
  } catch {
    return null
  }
}

function scaleOf(kind: ScaleKind, [first, second]: readonly (number | null)[]): KnownScale | null {
  switch (kind) {
    case 'card': case 'a6': return { kind: 'rectangle', ...KNOWN_OBJECTS[kind] }
    case 'rectangle': return first == null || second == null ? null : { kind, sidesMm: [first, second], sizeSdMm: TYPED_SIZE_SD_MM }
    case 'ruler': return first == null ? null : { kind: 'two-points', distanceMm: first, sizeSdMm: TYPED_SIZE_SD_MM }
  }
}

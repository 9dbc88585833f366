'use client'

import { useState } from 'react'
import { kindNames } from '@/lib/language/kind-names'
import { logPad } from '@/lib/language/log-pad'
import { readingsWords } from '@/lib/language/readings'
import { say, type Locale } from '@/lib/language/say'
import type { PadBand } from '@/lib/reports/pad-bands'
import type { TypedIndication } from '@/lib/schemas/readings'
import { INDICATION_SIZES, ON_A_TOE, type IndicationSize } from '@/lib/scoring/indication-sizes'
import { INDICATION_KINDS, type IndicationKind } from '@/lib/scoring/types'
import { Button } from '../ui/button'
import { RadioPills } from '../ui/radio-pills'
import { Select } from '../ui/select'
import { TextInput } from '../ui/text-input'
import type { SizeFrame } from '@/lib/reports/size-frame'
import { SizePad } from './size-pad'

export const isOnToe = (kind: IndicationKind): boolean => ON_A_TOE.includes(kind)

/** The pad of something small opens on the first eighth of an inch, in sixty-fourths. */
const SMALL: PadBand = { expected: { minMm: 0.4, maxMm: 1.6 }, allowed: null, fromZero: false }
/** No pad for longer than this to begin with; the next page has it. */
const LONG_MM = 50.8

type Props = {
  readonly locale: Locale
  readonly vertical: boolean
  readonly frame: SizeFrame
  /** Names the radio buttons of this indication. */
  readonly name: string
  readonly row: TypedIndication
  readonly onChange: (part: Partial<TypedIndication>) => void
  readonly error: (box: 'kind' | 'at' | IndicationSize) => string | undefined
}

/** One indication: what, where and how large. The pad fills its sizes one after another. */
export function IndicationFields({ locale, vertical, frame, name, row, onChange, error }: Props) {
  const sizes = INDICATION_SIZES[row.kind]
  const [chosen, setChosen] = useState<IndicationSize | 'first' | null>('first')
  const [typing, setTyping] = useState(false)
  const firstEmpty = (of: TypedIndication): IndicationSize | null => sizes.find((size) => of[size].trim() === '') ?? null
  const wanted = chosen === 'first' ? firstEmpty(row) : chosen
  const active = wanted !== null && sizes.includes(wanted) ? wanted : null
  const label = (size: IndicationSize): string => say(readingsWords, locale, size)
  const toe = (key: 'toeA' | 'toeB'): string => say(readingsWords, locale, vertical ? (`${key}Vertical` as const) : key)

  function put(size: IndicationSize, text: string): void {
    onChange({ [size]: text })
    setChosen(text === '' ? size : firstEmpty({ ...row, [size]: text }))
  }

  return (
    <>
      <div className="grid grid-cols-2 gap-3 sm:grid-cols-4">
        <Select label={say(readingsWords, locale, 'kind')} value={row.kind} error={error('kind')}
          onChange={(event) => { setChosen('first'); onChange({ kind: INDICATION_KINDS.find((kind) => kind === event.target.value) ?? row.kind, length: '', depth: '', diameter: '', height: '' }) }}
          choices={INDICATION_KINDS.map((kind) => ({ value: kind, label: kindNames[locale][kind] }))} />
        <TextInput figures autoComplete="off" label={say(readingsWords, locale, 'at')} value={row.at} error={error('at')} onChange={(event) => onChange({ at: event.target.value })} />
        {sizes.map((size) => (
          <TextInput key={size} figures autoComplete="off" inputMode={typing ? 'text' : 'none'} label={label(size)} value={row[size]} error={error(size)}
            onFocus={() => setChosen(size)} onChange={(event) => onChange({ [size]: event.target.value })} />
        ))}
      </div>
      {isOnToe(row.kind) && (
        <RadioPills legend={say(readingsWords, locale, 'toe')} name={name} value={row.toe ?? 'none'}
          onChange={(event) => onChange({ toe: event.target.value === 'A' ? 'A' : event.target.value === 'B' ? 'B' : null })}
          pills={[{ value: 'A', label: toe('toeA') }, { value: 'B', label: toe('toeB') }, { value: 'none', label: say(readingsWords, locale, 'toeNone') }]} />
      )}
      {active && (
        <div className="grid gap-2 border-y-2 border-ink py-3">
          <p className="font-head text-xl font-semibold">{label(active)}</p>
          {!typing && (
            <SizePad size={active} locale={locale} label={label(active)} units={frame.units} gauge={frame.units === 'mm' ? 'mm' : active === 'length' ? frame.gauge : 'in64'}
              band={active === 'length' ? longBand(frame.lengthMm) : SMALL} text={row[active]} onPut={(text) => put(active, text)} />
          )}
          <div><Button onClick={() => setTyping(!typing)}>{say(logPad, locale, typing ? 'padInstead' : 'typeInstead')}</Button></div>
        </div>
      )}
    </>
  )
}

const longBand = (lengthMm: number): PadBand => ({ expected: { minMm: 0, maxMm: Math.min(LONG_MM, lengthMm) }, allowed: null, fromZero: false })

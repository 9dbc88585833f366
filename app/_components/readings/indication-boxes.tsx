'use client'

import { kindNames } from '@/lib/language/rules'
import { readingsWords } from '@/lib/language/readings'
import { say } from '@/lib/language/say'
import type { TypedIndication } from '@/lib/schemas/readings'
import { INDICATION_KINDS, type IndicationKind } from '@/lib/scoring/types'
import { Button } from '../ui/button'
import { RadioPills } from '../ui/radio-pills'
import { Select } from '../ui/select'
import { TextInput } from '../ui/text-input'
import type { EditorProps } from './editor-props'

type SizeBox = 'length' | 'depth' | 'diameter' | 'height'

/** The sizes that mean something for each kind; a form asks for no others. */
const SIZES: Readonly<Record<IndicationKind, readonly SizeBox[]>> = {
  crack: ['length'], 'crater-crack': ['length'], 'lack-of-fusion': ['length'], undercut: ['depth', 'length'], pore: ['diameter'],
  overlap: ['height', 'length'], 'crater-pipe': ['depth', 'diameter'], 'poor-restart': ['height'], 'arc-strike': [], spatter: [],
  slag: ['length'], 'burn-through': ['diameter'],
}
const ON_A_TOE: readonly IndicationKind[] = ['undercut', 'overlap', 'crack', 'lack-of-fusion']

/** What was seen, each with its place and size. */
export function IndicationBoxes({ locale, vertical, value, onChange, errors }: EditorProps) {
  const { indications } = value
  const set = (index: number, change: Partial<TypedIndication>): void =>
    onChange({ ...value, indications: indications.map((row, at) => (at === index ? { ...row, ...change } : row)) })
  const add = (): void =>
    onChange({ ...value, indications: [...indications, { kind: 'undercut', toe: null, at: '', length: '', depth: '', diameter: '', height: '' }] })
  const remove = (index: number): void => onChange({ ...value, indications: indications.filter((_, at) => at !== index) })
  const toe = (key: 'toeA' | 'toeB'): string => say(readingsWords, locale, vertical ? (`${key}Vertical` as const) : key)

  return (
    <div className="grid gap-4">
      {indications.length === 0 && <p className="text-ink-2">{say(readingsWords, locale, 'noneYet')}</p>}
      {indications.map((row, index) => (
        <fieldset key={index} className="grid gap-3 border border-line bg-plate p-3">
          <legend className="px-1 font-head text-xl font-semibold">{say(readingsWords, locale, 'indication', { n: index + 1 })}</legend>
          <div className="grid grid-cols-2 gap-3 sm:grid-cols-4">
            <Select label={say(readingsWords, locale, 'kind')} value={row.kind} error={errors[`indications.${index}.kind`]}
              onChange={(event) => set(index, { kind: INDICATION_KINDS.find((kind) => kind === event.target.value) ?? row.kind, length: '', depth: '', diameter: '', height: '' })}
              choices={INDICATION_KINDS.map((kind) => ({ value: kind, label: kindNames[locale][kind] }))} />
            <TextInput figures autoComplete="off" label={say(readingsWords, locale, 'at')} value={row.at} error={errors[`indications.${index}.at`]}
              onChange={(event) => set(index, { at: event.target.value })} />
            {SIZES[row.kind].map((box) => (
              <TextInput key={box} figures autoComplete="off" label={say(readingsWords, locale, box)} value={row[box]} error={errors[`indications.${index}.${box}`]}
                onChange={(event) => set(index, { [box]: event.target.value })} />
            ))}
          </div>
          {ON_A_TOE.includes(row.kind) && (
            <RadioPills legend={say(readingsWords, locale, 'toe')} name={`toe-${index}`} value={row.toe ?? 'none'}
              onChange={(event) => set(index, { toe: event.target.value === 'A' ? 'A' : event.target.value === 'B' ? 'B' : null })}
              pills={[{ value: 'A', label: toe('toeA') }, { value: 'B', label: toe('toeB') }, { value: 'none', label: say(readingsWords, locale, 'toeNone') }]} />
          )}
          <div><Button onClick={() => remove(index)}>{say(readingsWords, locale, 'remove', { n: index + 1 })}</Button></div>
        </fieldset>
      ))}
      <div><Button onClick={add}>{say(readingsWords, locale, 'addIndication')}</Button></div>
    </div>
  )
}

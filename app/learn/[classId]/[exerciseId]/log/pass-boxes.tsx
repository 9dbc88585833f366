'use client'

import { learn } from '@/lib/language/learn'
import { say, type Locale } from '@/lib/language/say'
import { POLARITIES } from '@/lib/procedure/process'
import type { PassForm } from '@/lib/schemas/passes'
import { Button } from '@/app/_components/ui/button'
import { Select } from '@/app/_components/ui/select'
import { TextInput } from '@/app/_components/ui/text-input'

type Props = {
  readonly locale: Locale
  readonly units: 'in' | 'mm'
  readonly usesWire: boolean
  readonly usesGas: boolean
  readonly value: readonly PassForm[]
  readonly onChange: (value: readonly PassForm[]) => void
  /** Sentences by path: '0.amps'. */
  readonly errors: Readonly<Record<string, string>>
}

/** What was really run on each pass. A pass added takes over the settings of the one before, not its time and length. */
export function PassBoxes({ locale, units, usesWire, usesGas, value, onChange, errors }: Props) {
  const set = (index: number, change: Partial<PassForm>): void => onChange(value.map((pass, at) => (at === index ? { ...pass, ...change } : pass)))
  const box = (index: number, name: Exclude<keyof PassForm, 'polarity'>, label: string) => (
    <TextInput figures autoComplete="off" label={label} value={value[index]?.[name] ?? ''} error={errors[`${index}.${name}`]}
      onChange={(event) => set(index, { [name]: event.target.value })} />
  )
  const inUnit = (name: 'amps' | 'volts' | 'wireFeed' | 'arcTime', unit: string): string => `${say(learn, locale, name)}, ${unit}`
  const last = value.at(-1)
  return (
    <div className="grid gap-4">
      {value.map((pass, index) => (
        <fieldset key={index} className="border border-line bg-plate p-3">
          <legend className="px-1 font-head text-xl font-semibold">{say(learn, locale, 'pass', { n: index + 1 })}</legend>
          <div className="grid grid-cols-2 gap-3 sm:grid-cols-4">
            <Select label={say(learn, locale, 'polarity')} value={pass.polarity ?? ''} error={errors[`${index}.polarity`]}
              onChange={(event) => set(index, { polarity: POLARITIES.find((each) => each === event.target.value) ?? null })}
              choices={[{ value: '', label: '–' }, ...POLARITIES.map((each) => ({ value: each, label: each }))]} />
            {box(index, 'amps', inUnit('amps', 'A'))}
            {box(index, 'volts', inUnit('volts', 'V'))}
            {usesWire && box(index, 'wireFeed', inUnit('wireFeed', units === 'in' ? 'in/min' : 'm/min'))}
            {usesWire && box(index, 'stickOut', say(learn, locale, 'stickOut'))}
            {usesGas && box(index, 'gas', say(learn, locale, 'gasUsed'))}
            {box(index, 'arcTime', inUnit('arcTime', 'min:s'))}
            {box(index, 'length', say(learn, locale, 'weldedLength'))}
          </div>
          {value.length > 1 && (
            <div className="mt-3"><Button onClick={() => onChange(value.filter((_, at) => at !== index))}>{say(learn, locale, 'removePass', { n: index + 1 })}</Button></div>
          )}
        </fieldset>
      ))}
      {last && <div><Button onClick={() => onChange([...value, { ...last, arcTime: '', length: '' }])}>{say(learn, locale, 'addPass')}</Button></div>}
    </div>
  )
}

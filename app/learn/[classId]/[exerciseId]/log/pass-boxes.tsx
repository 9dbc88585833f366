'use client'

import { useState } from 'react'
import { logForm } from '@/lib/language/log-form'
import { logPad } from '@/lib/language/log-pad'
import { say, type Locale } from '@/lib/language/say'
import { RESTING_TIMER, type ArcTimer } from '@/lib/procedure/arc-timer'
import { POLARITIES, type Process } from '@/lib/procedure/process'
import type { PassForm } from '@/lib/schemas/passes'
import { formatForReader } from '@/lib/units/display'
import { later } from '@/app/_components/later'
import { withoutUnit } from '@/app/_components/readings/read-size'
import { Button } from '@/app/_components/ui/button'
import { classes } from '@/app/_components/ui/classes'
import { Select } from '@/app/_components/ui/select'
import { TextInput } from '@/app/_components/ui/text-input'
import { ArcTimerPanel } from './arc-timer-panel'

/** Comes with the first time and length. */
const PassFiguresLine = later(() => import('./pass-figures-line').then((module) => module.PassFiguresLine))

type Props = {
  readonly locale: Locale
  readonly units: 'in' | 'mm'
  readonly process: Process
  readonly lengthMm: number
  readonly expectedArcSeconds: number | null
  /** Last time's settings stand in the boxes: they are shown in a line until someone wants to change them. */
  readonly filledIn: boolean
  readonly value: readonly PassForm[]
  readonly timers: readonly ArcTimer[]
  readonly onChange: (value: readonly PassForm[], timers: readonly ArcTimer[]) => void
  /** Sentences by path: '0.amps'. */
  readonly errors: Readonly<Record<string, string>>
}
type TextBox = Exclude<keyof PassForm, 'polarity'>

/** What was really run on each pass. A pass added takes over the settings of the one before, not its time and length. */
export function PassBoxes({ locale, units, process, lengthMm, expectedArcSeconds, filledIn, value, timers, onChange, errors }: Props) {
  const [wanted, setWanted] = useState(!filledIn)
  const shown = wanted || Object.keys(errors).length > 0
  const usesWire = process !== 'SMAW'
  const usesGas = process === 'FCAW-G' || process === 'GMAW'
  const all = value.map((_, index) => timers[index] ?? RESTING_TIMER)
  const set = (index: number, change: Partial<PassForm>): void => onChange(value.map((pass, at) => (at === index ? { ...pass, ...change } : pass)), all)
  const box = (index: number, name: TextBox, label: string) => (
    <TextInput figures autoComplete="off" label={label} value={value[index]?.[name] ?? ''} error={errors[`${index}.${name}`]}
      onChange={(event) => set(index, { [name]: event.target.value })} />
  )
  const unitOf: Readonly<Partial<Record<TextBox, string>>> = { amps: 'A', volts: 'V', wireFeed: units === 'in' ? 'in/min' : 'm/min', arcTime: 'min:s' }
  const inUnit = (name: 'amps' | 'volts' | 'wireFeed' | 'arcTime'): string => `${say(logForm, locale, name)}, ${unitOf[name]}`
  const summary = (pass: PassForm): string => {
    const texts = (['amps', 'volts', 'wireFeed', 'stickOut', 'gas'] as const).flatMap((name) => {
      const text = pass[name].trim()
      const unit = name === 'stickOut' ? units : unitOf[name]
      return text === '' ? [] : [unit && /\d$/.test(text) ? `${text} ${unit}` : text]
    })
    return [...(pass.polarity === null ? [] : [pass.polarity]), ...texts].join(' · ') || say(logPad, locale, 'noneWritten')
  }
  const length = formatForReader(lengthMm, units)
  const last = value.at(-1)

  return (
    <div className="grid gap-4">
      {value.map((pass, index) => {
        return (
          <fieldset key={index} className="grid min-w-0 gap-3 border border-line bg-plate p-3">
            <legend className="px-1 font-head text-xl font-semibold">{say(logForm, locale, 'pass', { n: index + 1 })}</legend>
            {!shown && <p className="figures text-xl">{summary(pass)}</p>}
            <div className={classes('grid-cols-2 gap-3 sm:grid-cols-4', shown ? 'grid' : 'hidden')}>
              <Select label={say(logForm, locale, 'polarity')} value={pass.polarity ?? ''} error={errors[`${index}.polarity`]}
                onChange={(event) => set(index, { polarity: POLARITIES.find((each) => each === event.target.value) ?? null })}
                choices={[{ value: '', label: '–' }, ...POLARITIES.map((each) => ({ value: each, label: each }))]} />
              {box(index, 'amps', inUnit('amps'))}
              {box(index, 'volts', inUnit('volts'))}
              {usesWire && box(index, 'wireFeed', inUnit('wireFeed'))}
              {usesWire && box(index, 'stickOut', say(logForm, locale, 'stickOut'))}
              {usesGas && box(index, 'gas', say(logForm, locale, 'gasUsed'))}
            </div>
            <ArcTimerPanel locale={locale} pass={index + 1} timer={all[index] ?? RESTING_TIMER} expectedSeconds={expectedArcSeconds} arcTime={pass.arcTime}
              onTimer={(timer, arcTime) => onChange(value.map((each, at) => (at === index ? { ...each, arcTime } : each)), all.map((each, at) => (at === index ? timer : each)))} />
            <div className="grid grid-cols-2 gap-3 sm:grid-cols-4">
              {box(index, 'arcTime', inUnit('arcTime'))}
              {box(index, 'length', say(logForm, locale, 'weldedLength'))}
            </div>
            {pass.length.trim() === '' && <div><Button onClick={() => set(index, { length: withoutUnit(length) })}>{say(logPad, locale, 'wholeLength', { length })}</Button></div>}
            {pass.length.trim() !== '' && pass.arcTime.trim() !== '' && <PassFiguresLine locale={locale} units={units} process={process} pass={pass} />}
            {value.length > 1 && (
              <div><Button onClick={() => onChange(value.filter((_, at) => at !== index), all.filter((_, at) => at !== index))}>{say(logForm, locale, 'removePass', { n: index + 1 })}</Button></div>
            )}
          </fieldset>
        )
      })}
      <div className="flex flex-wrap gap-2">
        {!shown && <Button onClick={() => setWanted(true)}>{say(logPad, locale, 'change')}</Button>}
        {last && <Button onClick={() => onChange([...value, { ...last, arcTime: '', length: '' }], [...all, RESTING_TIMER])}>{say(logForm, locale, 'addPass')}</Button>}
      </div>
    </div>
  )
}

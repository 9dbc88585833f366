'use client'

import { logPad } from '@/lib/language/log-pad'
import { say, type Locale } from '@/lib/language/say'
import { Button } from '../ui/button'
import { classes } from '../ui/classes'

/** One key: a step of the gauge in use, as the gauge writes it ('15/64 in'). */
export type PadStep = {
  readonly valueMm: number
  readonly label: string
  /** Inside what the exercise allows: shaded, with a bar, and said. */
  readonly inside: boolean
}

type FractionPadProps = {
  /** What is being measured: 'Width, station 3'. */
  readonly label: string
  /** Smallest first; about eight, from lib/units/gauge-steps. */
  readonly steps: readonly PadStep[]
  readonly chosenMm: number | null
  readonly onChoose: (step: PadStep) => void
  /** Shows the smaller (-1) or larger (1) steps; left out where there are no others. */
  readonly onPage?: (by: -1 | 1) => void
  /** Empties the box: not measured after all. */
  readonly onClear?: () => void
  readonly locale: Locale
}

/** Lengths closer than this are one step of any gauge. */
const SAME_MM = 0.01

/** A size in one tap: the gauge's steps as large keys, those inside the limit marked. */
export function FractionPad({ label, steps, chosenMm, onChoose, onPage, onClear, locale }: FractionPadProps) {
  return (
    <div role="group" aria-label={label} className="grid gap-2">
      <div className="grid grid-cols-4 gap-2 md:grid-cols-8">
        {steps.map((step, index) => (
          <PadKey
            key={index}
            step={step}
            chosen={chosenMm !== null && Math.abs(chosenMm - step.valueMm) < SAME_MM}
            insideWord={say(logPad, locale, 'inside')}
            onChoose={onChoose}
          />
        ))}
      </div>
      {(onPage || onClear) && (
        <div className="grid grid-cols-3 gap-2">
          {onPage && <Button wide onClick={() => onPage(-1)}>{say(logPad, locale, 'smaller')}</Button>}
          {onClear && <Button wide disabled={chosenMm === null} onClick={onClear}>{say(logPad, locale, 'clear')}</Button>}
          {onPage && <Button wide onClick={() => onPage(1)}>{say(logPad, locale, 'larger')}</Button>}
        </div>
      )}
    </div>
  )
}

type PadKeyProps = { readonly step: PadStep; readonly chosen: boolean; readonly insideWord: string; readonly onChoose: (step: PadStep) => void }

function PadKey({ step, chosen, insideWord, onChoose }: PadKeyProps) {
  const [, figure = step.label, unit = ''] = /^(.*\d)\s*(\D*)$/.exec(step.label) ?? []
  return (
    <button
      type="button"
      aria-pressed={chosen}
      onClick={() => onChoose(step)}
      className={classes(
        'figures grid min-h-16 touch-manipulation place-content-center justify-items-stretch rounded-plate border-[1.5px] px-1 leading-none',
        chosen ? 'border-ink bg-ink text-paper' : step.inside ? 'border-accept bg-band text-ink' : 'border-ink bg-plate text-ink',
      )}
    >
      <span className="text-2xl leading-none whitespace-nowrap">{figure}</span>
      <span className="text-base leading-none">{unit}</span>
      <span aria-hidden="true" className={classes('mt-1 h-1 rounded-cell', step.inside && 'bg-current')} />
      {step.inside && <span className="sr-only">, {insideWord}</span>}
    </button>
  )
}

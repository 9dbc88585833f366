'use client'

import { kindNames } from '@/lib/language/kind-names'
import { readingsWords } from '@/lib/language/readings'
import { say, type Locale } from '@/lib/language/say'
import { INDICATION_KINDS, type IndicationKind } from '@/lib/scoring/types'
import { RadioPills } from '../ui/radio-pills'
import { ToggleButton } from '../ui/toggle-button'
import type { EditorProps } from './editor-props'

/** One tap a kind for "looked, none found", one for all of them, and the two yes/no questions. */
export function LookedFor({ locale, value, onChange, errors }: EditorProps) {
  const seen = new Set(value.indications.map((indication) => indication.kind))
  const looked = new Set(value.lookedFor)
  const all = INDICATION_KINDS.every((kind) => looked.has(kind) || seen.has(kind))
  const setAll = (): void => onChange({ ...value, lookedFor: all ? [] : [...INDICATION_KINDS], ...(all ? {} : { cratersFilled: value.cratersFilled ?? true, fusionComplete: value.fusionComplete ?? true }) })
  const toggle = (kind: IndicationKind): void =>
    onChange({ ...value, lookedFor: looked.has(kind) ? value.lookedFor.filter((each) => each !== kind) : [...value.lookedFor, kind] })

  return (
    <div className="grid gap-4">
      <ToggleButton pressed={all} onClick={setAll} wide>{say(readingsWords, locale, seen.size > 0 ? 'lookedRest' : 'lookedAll')}</ToggleButton>
      <div className="flex flex-wrap gap-2">
        {INDICATION_KINDS.map((kind) =>
          seen.has(kind) ? (
            <span key={kind} className="inline-flex min-h-12 items-center px-3 font-bold">{say(readingsWords, locale, 'seen', { kind: kindNames[locale][kind] })}</span>
          ) : (
            <ToggleButton key={kind} pressed={looked.has(kind)} onClick={() => toggle(kind)}>{kindNames[locale][kind]}</ToggleButton>
          ),
        )}
      </div>
      <YesNo locale={locale} name="cratersFilled" legend={say(readingsWords, locale, 'craters')} value={value.cratersFilled}
        onChange={(cratersFilled) => onChange({ ...value, cratersFilled })} error={errors['cratersFilled']} />
      <YesNo locale={locale} name="fusionComplete" legend={say(readingsWords, locale, 'fusion')} value={value.fusionComplete}
        onChange={(fusionComplete) => onChange({ ...value, fusionComplete })} error={errors['fusionComplete']} />
    </div>
  )
}

type YesNoProps = {
  readonly locale: Locale
  readonly name: string
  readonly legend: string
  readonly value: boolean | null
  readonly onChange: (value: boolean | null) => void
  readonly error: string | undefined
}

function YesNo({ locale, name, legend, value, onChange, error }: YesNoProps) {
  return (
    <RadioPills
      legend={legend} name={name} value={value === null ? 'none' : value ? 'yes' : 'no'}
      onChange={(event) => onChange(event.target.value === 'none' ? null : event.target.value === 'yes')}
      pills={[
        { value: 'yes', label: say(readingsWords, locale, 'yes') },
        { value: 'no', label: say(readingsWords, locale, 'no') },
        { value: 'none', label: say(readingsWords, locale, 'notLooked') },
      ]}
      error={error ?? null}
    />
  )
}

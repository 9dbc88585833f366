'use client'

import type { IndicationKind } from '@/lib/scoring/types'
import { Checkbox } from '@/app/_components/ui/checkbox'
import { FieldError } from '@/app/_components/ui/field'
import { indicationChoices } from './choices'

type KindBoxesProps = {
  readonly legend: string
  readonly name: string
  readonly value: readonly IndicationKind[]
  readonly onChange: (kinds: readonly IndicationKind[]) => void
  readonly error: string | undefined
}

/** Which indications a rule looks at. */
export function KindBoxes({ legend, name, value, onChange, error }: KindBoxesProps) {
  return (
    <fieldset className="grid gap-1" aria-describedby={error ? `${name}-problem` : undefined} {...(error && { tabIndex: -1, 'data-problem': true })}>
      <legend className="font-head text-xl leading-tight font-semibold">{legend}</legend>
      <div className="grid grid-cols-1 gap-x-6 min-[30rem]:grid-cols-2 lg:grid-cols-3">
        {indicationChoices.map(({ value: kind, label }) => (
          <Checkbox
            key={kind} label={label} checked={value.includes(kind)}
            onChange={(event) => onChange(event.target.checked ? [...value, kind] : value.filter((each) => each !== kind))}
          />
        ))}
      </div>
      {error && <FieldError id={`${name}-problem`}>{error}</FieldError>}
    </fieldset>
  )
}

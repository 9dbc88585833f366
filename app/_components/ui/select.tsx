import type { ComponentProps } from 'react'
import { controlLook } from './control-look'
import { Field, type FieldText } from './field'

export type Choice = { readonly value: string; readonly label: string; readonly disabled?: boolean }
type Native = Omit<ComponentProps<'select'>, 'className' | 'style' | 'id' | 'children'>

/** The platform's own list, with its label. An empty first choice is up to the caller: { value: '', label: 'Choose one' }. */
export function Select({ label, hint, error, choices, ...select }: FieldText & Native & { readonly choices: readonly Choice[] }) {
  return (
    <Field label={label} hint={hint} error={error}>
      {(wiring) => (
        <select {...select} {...wiring} className={controlLook(false)}>
          {choices.map((choice) => (
            <option key={choice.value} value={choice.value} disabled={choice.disabled}>
              {choice.label}
            </option>
          ))}
        </select>
      )}
    </Field>
  )
}

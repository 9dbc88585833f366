import type { ComponentProps } from 'react'
import { controlLook } from './control-look'
import { Field, type FieldText } from './field'

type Native = Omit<ComponentProps<'input'>, 'className' | 'style' | 'id'>

/** One line of text with its label. `figures` sets sizes and numbers in the condensed face. */
export function TextInput({ label, hint, error, figures = false, ...input }: FieldText & Native & { readonly figures?: boolean }) {
  return (
    <Field label={label} hint={hint} error={error}>
      {(wiring) => <input type="text" {...input} {...wiring} className={controlLook(figures)} />}
    </Field>
  )
}

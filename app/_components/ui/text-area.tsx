import type { ComponentProps } from 'react'
import { controlLook } from './control-look'
import { Field, type FieldText } from './field'

type Native = Omit<ComponentProps<'textarea'>, 'className' | 'style' | 'id'>

/** Several lines of text with their label. */
export function TextArea({ label, hint, error, rows = 4, ...area }: FieldText & Native) {
  return (
    <Field label={label} hint={hint} error={error}>
      {(wiring) => <textarea rows={rows} {...area} {...wiring} className={controlLook(false)} />}
    </Field>
  )
}

import { useId, type ComponentProps, type ReactNode } from 'react'
import { FieldError } from './field'

type Native = Omit<ComponentProps<'input'>, 'className' | 'style' | 'type' | 'id'>

/** A yes-or-no that is saved with its form. The whole row is the target, 48 px high. */
export function Checkbox({ label, hint, error, ...input }: Native & { readonly label: ReactNode; readonly hint?: ReactNode; readonly error?: string | null }) {
  const id = useId()
  const describedBy = [hint && `${id}-hint`, error && `${id}-error`].filter(Boolean).join(' ') || undefined
  return (
    <div className="grid gap-1">
      <label className="flex min-h-12 items-center gap-3 py-2">
        <input {...input} type="checkbox" aria-describedby={describedBy} aria-invalid={error ? true : undefined} className="size-6 shrink-0 accent-ink" />
        <span>{label}</span>
      </label>
      {hint && (
        <div id={`${id}-hint`} className="pl-9 text-ink-2">
          {hint}
        </div>
      )}
      {error && <FieldError id={`${id}-error`}>{error}</FieldError>}
    </div>
  )
}

import { useId, type ReactNode } from 'react'

export type FieldText = {
  readonly label: string
  readonly hint?: ReactNode
  /** A sentence that says what is wrong and what would be right. */
  readonly error?: string | null | undefined
}

/** What a control must carry so that its label, hint and error belong to it. */
export type FieldWiring = { readonly id: string; readonly 'aria-describedby': string | undefined; readonly 'aria-invalid': true | undefined }

/** A label above, the control, then the hint, then the error. The child receives the wiring and spreads it on the control. */
export function Field({ label, hint, error, children }: FieldText & { readonly children: (wiring: FieldWiring) => ReactNode }) {
  const id = useId()
  const hintId = hint ? `${id}-hint` : null
  const errorId = error ? `${id}-error` : null
  return (
    <div className="grid content-start gap-1.5">
      <label htmlFor={id} className="font-bold">
        {label}
      </label>
      {children({ id, 'aria-describedby': [hintId, errorId].filter(Boolean).join(' ') || undefined, 'aria-invalid': error ? true : undefined })}
      {hintId && (
        <div id={hintId} className="text-ink-2">
          {hint}
        </div>
      )}
      {errorId && error && <FieldError id={errorId}>{error}</FieldError>}
    </div>
  )
}

/** The error sentence of a field or of a group of choices, with the reject shape before it. */
export function FieldError({ id, children }: { readonly id: string; readonly children: ReactNode }) {
  return (
    <p id={id} className="flex items-start gap-2 font-bold">
      <svg viewBox="0 0 24 24" aria-hidden="true" className="mt-1 size-4 shrink-0 text-reject" fill="none" stroke="currentColor" strokeWidth={4}>
        <path d="M2 2h20v20H2zM4 20 20 4" />
      </svg>
      <span>{children}</span>
    </p>
  )
}

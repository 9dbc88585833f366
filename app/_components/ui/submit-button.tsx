'use client'

import type { ReactNode } from 'react'
import { useFormStatus } from 'react-dom'
import { buttonLook, type ButtonKind, type ButtonSize } from './button-look'

type SubmitButtonProps = {
  readonly children: ReactNode
  /** What it says while the form is being sent: 'Saving'. */
  readonly pendingWord: string
  readonly kind?: ButtonKind
  readonly size?: ButtonSize
  readonly wide?: boolean
  readonly name?: string
  readonly value?: string
}

/** Sends its form, once: a second press while it is being sent does nothing. Works as a plain submit button without JavaScript. */
export function SubmitButton({ children, pendingWord, kind = 'primary', size = 'shop', wide = false, name, value }: SubmitButtonProps) {
  const { pending } = useFormStatus()
  return (
    <>
      <button
        type="submit"
        name={name}
        value={value}
        aria-disabled={pending || undefined}
        onClick={(event) => pending && event.preventDefault()}
        className={buttonLook(kind, size, wide)}
      >
        {pending ? pendingWord : children}
      </button>
      <span role="status" className="sr-only">
        {pending && pendingWord}
      </span>
    </>
  )
}

'use client'

import { useRouter } from 'next/navigation'
import type { ReactNode } from 'react'
import { SendButton } from '../send-button'
import { Notice } from '../ui/notice'
import { useSentForm, type Answer } from '../use-sent-form'

type Props = {
  readonly send: (fields: Record<string, string>) => Promise<Answer<object>>
  readonly label: string
  /** Said instead of the label to someone who hears the page: which row the button belongs to. */
  readonly name?: string | undefined
  readonly danger?: boolean
  readonly children?: (error: (field: string) => string | undefined) => ReactNode
}

/** One change of a list: its boxes, its button, and the sentence when it was not done. The page is read again after it. */
export function OneStep({ send, label, name, danger = false, children }: Props) {
  const router = useRouter()
  const { onSubmit, busy, refused, error } = useSentForm<object>(send, () => router.refresh(), 'It did not get through. Check the connection and try again.')
  return (
    <form method="post" onSubmit={onSubmit} noValidate className="flex flex-wrap items-end gap-2">
      {children?.(error)}
      <SendButton busy={busy} kind={danger ? 'danger' : 'secondary'} aria-label={name}>{label}</SendButton>
      {refused && <div className="w-full"><Notice kind="problem" word="Not done" live>{refused.message}</Notice></div>}
    </form>
  )
}

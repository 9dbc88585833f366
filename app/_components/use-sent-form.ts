'use client'

import { useState, type FormEvent } from 'react'

/** What an action answers, as far as a form needs to know it. */
export type Answer<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly code: string; readonly message: string; readonly fields: Readonly<Record<string, string>> }

export type Refused = Extract<Answer<never>, { ok: false }>

/**
 * Sends a native form to an action as plain text fields. What was typed stays in the boxes whatever the answer.
 * `failed` is said when the request itself did not get through.
 */
export function useSentForm<T>(
  send: (fields: Record<string, string>) => Promise<Answer<T>>,
  done: (value: T) => void,
  failed: string,
) {
  const [refused, setRefused] = useState<Refused | null>(null)
  const [busy, setBusy] = useState(false)

  async function submit(form: HTMLFormElement): Promise<void> {
    setBusy(true)
    const fields = Object.fromEntries([...new FormData(form)].map(([name, value]) => [name, typeof value === 'string' ? value : '']))
    try {
      const answer = await send(fields)
      setRefused(answer.ok ? null : answer)
      if (answer.ok) done(answer.value)
    } catch {
      setRefused({ ok: false, code: 'FAILED', message: failed, fields: {} })
    } finally {
      setBusy(false)
    }
  }

  const onSubmit = (event: FormEvent<HTMLFormElement>): void => {
    event.preventDefault()
    if (!busy) void submit(event.currentTarget)
  }
  return { onSubmit, busy, refused, error: (field: string): string | undefined => refused?.fields[field] }
}

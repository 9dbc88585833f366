'use client'

import { useRouter } from 'next/navigation'
import { useState } from 'react'
import { Button } from './ui/button'
import { Notice } from './ui/notice'
import { useHydrated } from './use-hydrated'
import type { Answer } from './use-sent-form'

type Props = {
  readonly label: string
  /** The whole of what the first button does, where the label alone stands in every row of a list. */
  readonly fullLabel?: string
  /** What is said on the button that does it; it names what follows. Without it the first press does it. */
  readonly sure?: string
  readonly keep?: string
  readonly send: () => Promise<Answer<unknown>>
  /** What to say once it is done; a secret is shown large, and only until the page is left. */
  readonly done: (value: unknown) => { readonly word: string; readonly text: string; readonly secret?: string | undefined }
}

/** A text of an action's answer, by its name. */
export function textOf(value: unknown, key: string): string | undefined {
  const found: unknown = typeof value === 'object' && value !== null && key in value ? (value as Record<string, unknown>)[key] : undefined
  return typeof found === 'string' ? found : undefined
}

/** A change that asks first, then says what came of it and shows the page anew. */
export function AskFirst({ label, fullLabel, sure, keep, send, done }: Props) {
  const router = useRouter()
  const hydrated = useHydrated()
  const [asked, setAsked] = useState(false)
  const [busy, setBusy] = useState(false)
  const [told, setTold] = useState<{ kind: 'ok' | 'problem'; word: string; text: string; secret?: string | undefined } | null>(null)

  async function change(): Promise<void> {
    if (busy) return
    setBusy(true)
    try {
      const answer = await send()
      setTold(answer.ok ? { kind: 'ok', ...done(answer.value) } : { kind: 'problem', word: 'Not done', text: answer.message })
      if (answer.ok) router.refresh()
    } catch {
      setTold({ kind: 'problem', word: 'Not done', text: 'It did not get through. Check the connection and try again.' })
    }
    setAsked(false)
    setBusy(false)
  }

  return (
    <div className="grid gap-3">
      <div className="flex flex-wrap gap-2">
        {sure !== undefined && !asked ? <Button disabled={!hydrated} aria-label={fullLabel} onClick={() => setAsked(true)}>{label}</Button> : (
          <>
            <Button kind={sure === undefined ? 'secondary' : 'primary'} disabled={!hydrated} aria-disabled={busy || undefined} aria-label={sure === undefined ? fullLabel : undefined} onClick={() => void change()}>{sure ?? label}</Button>
            {asked && <Button onClick={() => setAsked(false)}>{keep ?? 'Leave it'}</Button>}
          </>
        )}
      </div>
      {told && <Notice kind={told.kind} word={told.word} live>{told.secret !== undefined && <p className="figures text-2xl">{told.secret}</p>}<p>{told.text}</p></Notice>}
    </div>
  )
}

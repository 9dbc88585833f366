'use client'

import { useRouter } from 'next/navigation'
import { useState } from 'react'
import { Button } from '@/app/_components/ui/button'
import { LinkButton } from '@/app/_components/ui/link-button'
import { Notice } from '@/app/_components/ui/notice'
import { useHydrated } from '@/app/_components/use-hydrated'
import { newClassCode } from '@/app/teach/actions'

type Props = { readonly classId: string; readonly code: { readonly code: string; readonly until: string } | null }

/** The code students join with. A new one ends the old one, so it asks first. */
export function ClassCodePanel({ classId, code }: Props) {
  const router = useRouter()
  const [asked, setAsked] = useState(false)
  const [busy, setBusy] = useState(false)
  const hydrated = useHydrated()
  const [problem, setProblem] = useState<string | null>(null)

  async function make(): Promise<void> {
    setBusy(true)
    try {
      const result = await newClassCode({ classId })
      setProblem(result.ok ? null : result.message)
      if (result.ok) router.refresh()
    } catch {
      setProblem('The code could not be made. Check the connection and try again.')
    }
    setAsked(false)
    setBusy(false)
  }

  return (
    <section className="grid gap-3">
      <h2 className="text-2xl">Class code</h2>
      {problem && <Notice kind="problem" word="Not made" live>{problem}</Notice>}
      {code ? <p><span className="figures text-3xl">{code.code}</span> <span className="text-ink-2">until {code.until}</span></p> : <p className="text-ink-2">No code opens this class now.</p>}
      <div className="flex flex-wrap gap-2">
        {code && !asked ? <Button disabled={!hydrated} onClick={() => setAsked(true)}>Make a new code</Button> : (
          <>
            <Button kind="primary" disabled={!hydrated} aria-disabled={busy || undefined} onClick={() => void (busy || make())}>{code ? 'End the old code and make a new one' : 'Make a code'}</Button>
            {asked && <Button onClick={() => setAsked(false)}>Keep the old code</Button>}
          </>
        )}
        {code && <LinkButton href={`/print/code-sheet/${classId}`}>Print it for the board</LinkButton>}
      </div>
    </section>
  )
}

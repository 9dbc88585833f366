'use client'

import { useState } from 'react'
import { Button } from '@/app/_components/ui/button'
import { Notice } from '@/app/_components/ui/notice'
import { useHydrated } from '@/app/_components/use-hydrated'
import { resetPassword } from '@/app/teach/actions'

type Props = { readonly studentId: string; readonly name: string; readonly signInName: string }

/** Gives a student a first password to read out. It signs them out everywhere, so it asks first. */
export function ResetPasswordPanel({ studentId, name, signInName }: Props) {
  const [asked, setAsked] = useState(false)
  const [busy, setBusy] = useState(false)
  const hydrated = useHydrated()
  const [told, setTold] = useState<{ ok: true; password: string } | { ok: false; message: string } | null>(null)

  async function reset(): Promise<void> {
    setBusy(true)
    try {
      const result = await resetPassword({ studentId })
      setTold(result.ok ? { ok: true, password: result.value.password } : { ok: false, message: result.message })
    } catch {
      setTold({ ok: false, message: 'It did not get through. Check the connection and try again.' })
    }
    setAsked(false)
    setBusy(false)
  }

  return (
    <section className="grid content-start gap-3">
      <h2 className="text-2xl">Sign-in</h2>
      <p>{name} signs in as <strong>{signInName}</strong>.</p>
      {told?.ok === true && <Notice kind="ok" word="New first password" live><p className="figures text-2xl">{told.password}</p><p>Read it out now: it is shown once. At the next sign-in {name} chooses a new one.</p></Notice>}
      {told?.ok === false && <Notice kind="problem" word="Not reset" live>{told.message}</Notice>}
      <div className="flex flex-wrap gap-2">
        {asked ? (
          <>
            <Button kind="primary" aria-disabled={busy || undefined} onClick={() => void (busy || reset())}>Sign {name} out everywhere and reset</Button>
            <Button onClick={() => setAsked(false)}>Keep the password</Button>
          </>
        ) : <Button disabled={!hydrated} onClick={() => setAsked(true)}>Reset the password</Button>}
      </div>
    </section>
  )
}

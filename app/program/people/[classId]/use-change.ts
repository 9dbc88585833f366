'use client'

import { useRouter } from 'next/navigation'
import { useState } from 'react'

type Answer = { readonly ok: true } | { readonly ok: false; readonly message: string }

/** Sends one change, then shows the page anew; `problem` is what to say when it was not made. */
export function useChange() {
  const router = useRouter()
  const [busy, setBusy] = useState(false)
  const [problem, setProblem] = useState<string | null>(null)

  async function change(send: () => Promise<Answer>): Promise<void> {
    if (busy) return
    setBusy(true)
    try {
      const answer = await send()
      setProblem(answer.ok ? null : answer.message)
      if (answer.ok) router.refresh()
    } catch {
      setProblem('Nothing was changed. Check the connection and try again.')
    } finally {
      setBusy(false)
    }
  }
  return { busy, problem, change }
}

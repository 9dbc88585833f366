'use client'

import { useRouter } from 'next/navigation'
import { useState } from 'react'
import { Button } from '@/app/_components/ui/button'
import { useHydrated } from '@/app/_components/use-hydrated'
import { beenThere } from '@/app/teach/actions'

type Props = { readonly lookId: string; readonly who: string }

/** The instructor has been to the booth: the request leaves the queue. */
export function BeenThereButton({ lookId, who }: Props) {
  const router = useRouter()
  const hydrated = useHydrated()
  const [busy, setBusy] = useState(false)
  const [problem, setProblem] = useState<string | null>(null)

  async function answer(): Promise<void> {
    setBusy(true)
    try {
      const result = await beenThere({ lookId })
      setProblem(result.ok ? null : result.message)
      if (result.ok) router.refresh()
    } catch {
      setProblem('Not sent. Check the connection and try again.')
    }
    setBusy(false)
  }

  return (
    <>
      <Button disabled={!hydrated} aria-disabled={busy || undefined} onClick={() => void (busy || answer())}>Been there<span className="sr-only">, {who}</span></Button>
      {problem && <p role="alert" className="mt-1 max-w-48 text-base">{problem}</p>}
    </>
  )
}

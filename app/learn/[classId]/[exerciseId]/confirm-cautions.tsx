'use client'

import { useRouter } from 'next/navigation'
import { useState } from 'react'
import { door } from '@/lib/language/door'
import { learn } from '@/lib/language/learn'
import { say, type Locale } from '@/lib/language/say'
import { Button } from '@/app/_components/ui/button'
import { Notice } from '@/app/_components/ui/notice'
import { useHydrated } from '@/app/_components/use-hydrated'
import { confirmCautions } from '@/app/learn/actions'

type Props = { readonly locale: Locale; readonly classId: string; readonly exerciseId: string; readonly next: string }

/** The student's word that the cautions were read; then on to the log. */
export function ConfirmCautions({ locale, classId, exerciseId, next }: Props) {
  const router = useRouter()
  const [busy, setBusy] = useState(false)
  const hydrated = useHydrated()
  const [problem, setProblem] = useState<string | null>(null)

  async function confirm(): Promise<void> {
    setBusy(true)
    try {
      const result = await confirmCautions({ classId, exerciseId })
      if (result.ok) return router.push(next)
      setProblem(result.message)
    } catch {
      setProblem(say(door, locale, 'failed'))
    }
    setBusy(false)
  }

  return (
    <div className="grid gap-3">
      {problem && <Notice kind="problem" word={say(door, locale, 'notSaved')} live>{problem}</Notice>}
      <Button disabled={!hydrated} kind="primary" wide aria-disabled={busy || undefined} onClick={() => void (busy || confirm())}>
        {say(learn, locale, busy ? 'confirming' : 'confirmCautions')}
      </Button>
    </div>
  )
}

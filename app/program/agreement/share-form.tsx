'use client'

import { useRouter } from 'next/navigation'
import { useState } from 'react'
import { SendButton } from '@/app/_components/send-button'
import { Notice } from '@/app/_components/ui/notice'
import { TextInput } from '@/app/_components/ui/text-input'
import { useHydrated } from '@/app/_components/use-hydrated'
import { useSentForm } from '@/app/_components/use-sent-form'
import { saveSecondShare } from './actions'

/** How many coupons are read twice. `share`: as it stands, from 0 to 1. */
export function ShareForm({ share }: { readonly share: number }) {
  const router = useRouter()
  const hydrated = useHydrated()
  const [saved, setSaved] = useState(false)
  const { onSubmit, busy, refused, error } = useSentForm<object>(saveSecondShare, () => {
    setSaved(true)
    router.refresh()
  }, 'It did not get through. Check the connection and try again.')
  return (
    <form inert={!hydrated} method="post" onSubmit={onSubmit} noValidate className="grid max-w-xl gap-4">
      <TextInput
        label="Coupons read twice, in percent" name="percent" defaultValue={String(Math.round(share * 100))} figures inputMode="numeric" autoComplete="off"
        hint="Of the coupons graded from now on. The second reader is not told, and no grade changes. 0 is none." error={error('percent')}
      />
      {refused ? <Notice kind="problem" word="Not saved" live>{refused.message}</Notice> : saved && !busy && <Notice kind="ok" word="Saved" live>It holds for coupons graded from now on.</Notice>}
      <div><SendButton busy={busy}>{busy ? 'Saving' : 'Save the share'}</SendButton></div>
    </form>
  )
}

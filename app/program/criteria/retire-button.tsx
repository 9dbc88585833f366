'use client'

import { useRouter } from 'next/navigation'
import { SendButton } from '@/app/_components/send-button'
import { Notice } from '@/app/_components/ui/notice'
import { useSentForm } from '@/app/_components/use-sent-form'
import { retireCriteria } from './actions'

type Props = { readonly criteriaId: string; readonly version: number; readonly retired: boolean }

/** Takes a version of the program's own from choice, or offers it again. */
export function RetireButton({ criteriaId, version, retired }: Props) {
  const router = useRouter()
  const { onSubmit, busy, refused } = useSentForm<object>(() => retireCriteria({ criteriaId, version, retired: !retired }), () => router.refresh(), 'It did not get through. Check the connection and try again.')
  return (
    <form method="post" onSubmit={onSubmit} className="grid gap-2">
      {refused && <Notice kind="problem" word="Not done" live>{refused.message}</Notice>}
      <div><SendButton busy={busy}>{retired ? `Offer version ${version} again` : `Retire version ${version}`}</SendButton></div>
    </form>
  )
}

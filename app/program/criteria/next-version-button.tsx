'use client'

import { useRouter } from 'next/navigation'
import { SendButton } from '@/app/_components/send-button'
import { Notice } from '@/app/_components/ui/notice'
import { useSentForm } from '@/app/_components/use-sent-form'
import { beginNextVersion } from './actions'

/** Opens the next version of a set of the program's own. */
export function NextVersionButton({ criteriaId, title }: { readonly criteriaId: string; readonly title: string }) {
  const router = useRouter()
  const { onSubmit, busy, refused } = useSentForm(() => beginNextVersion({ criteriaId }), ({ draftId }) => router.push(`/program/criteria/drafts/${draftId}`), 'It did not get through. Check the connection and try again.')
  return (
    <form method="post" onSubmit={onSubmit} className="grid gap-2">
      {refused && <Notice kind="problem" word="Not begun" live>{refused.message}</Notice>}
      <div><SendButton busy={busy} aria-label={`Change ${title}`}>{busy ? 'Opening' : 'Change it'}</SendButton></div>
    </form>
  )
}

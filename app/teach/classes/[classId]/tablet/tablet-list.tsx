'use client'

import { useRouter } from 'next/navigation'
import { SendButton } from '@/app/_components/send-button'
import { Notice } from '@/app/_components/ui/notice'
import { useSentForm } from '@/app/_components/use-sent-form'
import { closeSharedTablet } from './actions'

type Line = { readonly id: string; readonly name: string; readonly text: string }

/** The open tablets, each with the way to close it from here. */
export function TabletList({ tablets }: { readonly tablets: readonly Line[] }) {
  if (tablets.length === 0) return <p className="text-ink-2">No tablet is open for this class.</p>
  return <ul className="divide-y divide-line border-y border-line">{tablets.map((tablet) => <TabletLine key={tablet.id} {...tablet} />)}</ul>
}

function TabletLine({ id, name, text }: Line) {
  const router = useRouter()
  const { onSubmit, busy, refused } = useSentForm<object>(() => closeSharedTablet({ tabletId: id }), () => router.refresh(), 'It could not be closed. Check the connection and try again.')
  return (
    <li className="flex flex-wrap items-center justify-between gap-3 py-3">
      <p className="min-w-0"><strong>{name}</strong><span className="block text-base text-ink-2">{text}</span></p>
      <form method="post" onSubmit={onSubmit}><SendButton busy={busy} aria-label={`Close ${name}`}>{busy ? 'Closing' : 'Close'}</SendButton></form>
      {refused && <Notice kind="problem" word="Not closed" live>{refused.message}</Notice>}
    </li>
  )
}

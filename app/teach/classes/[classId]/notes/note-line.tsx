'use client'

import { useRouter } from 'next/navigation'
import { useState } from 'react'
import { SendButton } from '@/app/_components/send-button'
import { Button } from '@/app/_components/ui/button'
import { Notice } from '@/app/_components/ui/notice'
import type { Choice } from '@/app/_components/ui/select'
import { useHydrated } from '@/app/_components/use-hydrated'
import { useSentForm } from '@/app/_components/use-sent-form'
import { takeDownNote } from './actions'
import { NoteForm, type NoteFields } from './note-form'

type Props = {
  readonly classId: string
  readonly exercises: readonly Choice[]
  readonly today: string
  readonly note: NoteFields
  readonly head: string
  readonly about: string | null
  readonly by: string
}

/** One note as the class sees it, with the way to word it anew or take it down. Either way the old row is kept. */
export function NoteLine({ classId, exercises, today, note, head, about, by }: Props) {
  const router = useRouter()
  const hydrated = useHydrated()
  const [editing, setEditing] = useState(false)
  const { onSubmit, busy, refused } = useSentForm<object>(() => takeDownNote({ noteId: note.id }), () => router.refresh(), 'It did not get through. Check the connection and try again.')
  if (editing) return <li className="py-3"><NoteForm classId={classId} exercises={exercises} today={today} replaces={note} onDone={() => setEditing(false)} /></li>
  return (
    <li className="grid gap-2 py-3">
      <p className="font-head text-lg leading-tight font-semibold">{head}</p>
      {about && <p className="text-base text-ink-2">{about}</p>}
      <p className="max-w-prose break-words whitespace-pre-line">{note.body}</p>
      <p className="text-base text-ink-2">{by}</p>
      {refused && <Notice kind="problem" word="Not taken down" live>{refused.message}</Notice>}
      <form method="post" onSubmit={onSubmit} className="flex flex-wrap gap-2">
        <Button disabled={!hydrated} onClick={() => setEditing(true)}>Word it anew</Button>
        <SendButton busy={busy}>{busy ? 'Taking it down' : 'Take it down'}</SendButton>
      </form>
    </li>
  )
}

'use client'

import { useRouter } from 'next/navigation'
import { useState } from 'react'
import { SendButton } from '@/app/_components/send-button'
import { Button } from '@/app/_components/ui/button'
import { Notice } from '@/app/_components/ui/notice'
import { TextArea } from '@/app/_components/ui/text-area'
import { useHydrated } from '@/app/_components/use-hydrated'
import { useSentForm, type Answer } from '@/app/_components/use-sent-form'
import { MOST_STAFF_NOTE } from '@/lib/schemas/note-length'

export type StaffNoteLine = { readonly id: string; readonly body: string; readonly by: string }

/** What changes the notes: the room's own actions. */
export type NoteActions = {
  readonly save: (input: { readonly studentId: string; readonly body: string }) => Promise<Answer<object>>
  readonly takeDown: (input: { readonly noteId: string }) => Promise<Answer<unknown>>
}
type Props = { readonly studentId: string; readonly notes: readonly StaffNoteLine[] } & NoteActions

const FAILED = 'It did not get through. Check the connection and try again.'

/** What staff keep in mind about a student. The student never sees it. */
export function StaffNotesPanel({ studentId, notes, save, takeDown }: Props) {
  const router = useRouter()
  const [written, setWritten] = useState(0)
  const { onSubmit, busy, refused, error } = useSentForm<object>(
    (fields) => save({ studentId, body: fields['body'] ?? '' }),
    () => {
      setWritten(written + 1)
      router.refresh()
    },
    FAILED,
  )
  return (
    <section className="grid content-start gap-3" aria-labelledby="staff-notes">
      <h2 id="staff-notes" className="text-2xl">Notes for staff</h2>
      <p className="text-base text-ink-2">Instructors of this student and coordinators read these. The student does not. A note taken down is kept in the record.</p>
      {notes.length > 0 && <ul className="divide-y divide-line border-y border-line">{notes.map((note) => <NoteLine key={note.id} note={note} takeDown={takeDown} />)}</ul>}
      <form key={written} method="post" onSubmit={onSubmit} className="grid max-w-2xl gap-3" noValidate>
        {refused && <Notice kind="problem" word="Not saved" live>{refused.message}</Notice>}
        <TextArea label="New note" name="body" maxLength={MOST_STAFF_NOTE} error={error('body')} />
        <div><SendButton busy={busy}>{busy ? 'Saving' : 'Keep the note'}</SendButton></div>
      </form>
    </section>
  )
}

function NoteLine({ note, takeDown }: { readonly note: StaffNoteLine } & Pick<NoteActions, 'takeDown'>) {
  const router = useRouter()
  const hydrated = useHydrated()
  const [busy, setBusy] = useState(false)
  const [problem, setProblem] = useState<string | null>(null)

  async function send(): Promise<void> {
    setBusy(true)
    try {
      const result = await takeDown({ noteId: note.id })
      setProblem(result.ok ? null : result.message)
      if (result.ok) router.refresh()
    } catch {
      setProblem(FAILED)
    }
    setBusy(false)
  }

  return (
    <li className="flex flex-wrap items-start justify-between gap-3 py-3">
      <div className="min-w-0 flex-1">
        <p className="whitespace-pre-line wrap-anywhere">{note.body}</p>
        <p className="text-base text-ink-2">{note.by}</p>
        {problem && <Notice kind="problem" word="Not taken down" live>{problem}</Notice>}
      </div>
      <Button disabled={!hydrated} aria-disabled={busy || undefined} aria-label={`Take down the note of ${note.by}`} onClick={() => void (busy || send())}>Take down</Button>
    </li>
  )
}

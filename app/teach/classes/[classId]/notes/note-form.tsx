'use client'

import { useRouter } from 'next/navigation'
import { useState } from 'react'
import { SendButton } from '@/app/_components/send-button'
import { Button } from '@/app/_components/ui/button'
import { Notice } from '@/app/_components/ui/notice'
import { RadioPills } from '@/app/_components/ui/radio-pills'
import { Select, type Choice } from '@/app/_components/ui/select'
import { TextArea } from '@/app/_components/ui/text-area'
import { TextInput } from '@/app/_components/ui/text-input'
import { useSentForm } from '@/app/_components/use-sent-form'
import { MOST_CLASS_NOTE } from '@/lib/schemas/note-length'
import { saveNote } from './actions'

export type NoteFields = { readonly id: string; readonly kind: 'demo' | 'message'; readonly onDate: string; readonly exerciseId: string | null; readonly body: string }

type Props = {
  readonly classId: string
  readonly exercises: readonly Choice[]
  /** The date at the school, YYYY-MM-DD. */
  readonly today: string
  /** The note these words will replace. */
  readonly replaces?: NoteFields
  readonly onDone?: () => void
}

/** Writes a note to the class. A demo has its class day; a message is of today. */
export function NoteForm({ classId, exercises, today, replaces, onDone }: Props) {
  const router = useRouter()
  const [kind, setKind] = useState(replaces?.kind ?? 'demo')
  const [written, setWritten] = useState(0)
  const { onSubmit, busy, refused, error } = useSentForm<object>(
    (fields) => saveNote({ classId, kind, onDate: fields['onDate'] ?? '', exerciseId: fields['exerciseId'] ?? '', body: fields['body'] ?? '', replaces: replaces?.id ?? '' }),
    () => {
      setWritten(written + 1)
      router.refresh()
      onDone?.()
    },
    'It did not get through. Check the connection and try again.',
  )
  return (
    <form key={written} method="post" onSubmit={onSubmit} className="grid max-w-2xl gap-4" noValidate>
      {refused && <Notice kind="problem" word="Not saved" live>{refused.message}</Notice>}
      {written > 0 && !refused && <Notice kind="ok" word="Written" live>The class sees it.</Notice>}
      <RadioPills
        legend="What is it?" name={`kind-${replaces?.id ?? 'new'}`} value={kind} onChange={(event) => setKind(event.target.value === 'message' ? 'message' : 'demo')}
        pills={[{ value: 'demo', label: 'Demo note' }, { value: 'message', label: 'Message' }]}
      />
      {kind === 'demo' && <TextInput label="Class day" type="date" name="onDate" defaultValue={replaces?.onDate ?? today} error={error('onDate')} />}
      <Select label="About an exercise (optional)" name="exerciseId" defaultValue={replaces?.exerciseId ?? ''} choices={[{ value: '', label: 'The whole class' }, ...exercises]} error={error('exerciseId')} />
      <TextArea label={kind === 'demo' ? 'What you showed' : 'Message'} name="body" maxLength={MOST_CLASS_NOTE} defaultValue={replaces?.body ?? ''} error={error('body')} />
      <div className="flex flex-wrap gap-2">
        <SendButton kind="primary" busy={busy}>{busy ? 'Saving' : replaces ? 'Replace it' : 'Tell the class'}</SendButton>
        {replaces && onDone && <Button onClick={onDone}>Leave it as it is</Button>}
      </div>
    </form>
  )
}

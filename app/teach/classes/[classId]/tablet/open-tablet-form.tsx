'use client'

import { SendButton } from '@/app/_components/send-button'
import { Notice } from '@/app/_components/ui/notice'
import { TextInput } from '@/app/_components/ui/text-input'
import { useSentForm } from '@/app/_components/use-sent-form'
import { MOST_TABLET_NAME } from '@/lib/schemas/note-length'
import { openTabletHere } from './actions'

const NAMES = '/tablet'

/** Makes the device it is shown on a shared tablet. It ends the instructor's own session here, and says so before. */
export function OpenTabletForm({ classId }: { readonly classId: string }) {
  const { onSubmit, busy, refused, error } = useSentForm<object>(
    (fields) => openTabletHere({ classId, name: fields['name'] ?? '' }),
    () => window.location.assign(NAMES), // a whole new page: nothing of the instructor's stays in memory
    'The tablet could not be opened. Check the connection and try again.',
  )
  return (
    <form method="post" onSubmit={onSubmit} className="grid max-w-xl gap-4" noValidate>
      {refused && <Notice kind="problem" word="Not opened" live>{refused.message}</Notice>}
      <p>Do this on the tablet itself. It shows the names of this class, and you are signed out on it.</p>
      <TextInput label="What is it called?" hint="As on its label: Bench tablet, Tablet 2" error={error('name')} name="name" maxLength={MOST_TABLET_NAME} autoComplete="off" />
      <div><SendButton kind="primary" busy={busy}>{busy ? 'Opening' : 'Open it here and sign me out'}</SendButton></div>
    </form>
  )
}

'use client'

import { SendButton } from '@/app/_components/send-button'
import { Select, type Choice } from '@/app/_components/ui/select'
import { TextInput } from '@/app/_components/ui/text-input'
import { addClass, archiveClass, saveClass } from './actions'
import { ChangeForm } from './change-form'
import { useSaved } from './use-saved'

type NewClassProps = { readonly terms: readonly Choice[]; readonly instructors: readonly Choice[]; readonly classes: readonly Choice[] }

/** A new class, empty or with another class's exercises. */
export function NewClassForm({ terms, instructors, classes }: NewClassProps) {
  const { onSubmit, busy, error, times, said } = useSaved((fields) => addClass(fields))
  return (
    <form key={times} method="post" onSubmit={onSubmit} noValidate className="grid max-w-2xl gap-4">
      <TextInput label="Name of the class" name="name" error={error('name')} />
      <Select label="Term" name="termId" choices={terms} error={error('termId')} />
      <Select label="Instructor" name="instructorId" choices={[{ value: '', label: 'Nobody yet' }, ...instructors]} error={error('instructorId')} />
      <div className="grid gap-4 sm:grid-cols-2">
        <TextInput label="Room (optional)" name="room" error={error('room')} />
        <TextInput label="Meets (optional)" name="meets" error={error('meets')} />
      </div>
      <Select label="Exercises" name="copyFrom" choices={[{ value: '', label: 'None yet' }, ...classes]} error={error('copyFrom')} hint="Copies the list of another class, with what opens what." />
      {said}
      <div><SendButton kind="primary" busy={busy}>{busy ? 'Saving' : 'Make the class'}</SendButton></div>
    </form>
  )
}

type LineProps = { readonly classId: string; readonly name: string; readonly room: string; readonly meets: string; readonly archived: boolean }

/** The ways to change one class; an archived one can only be taken back. */
export function ClassLine({ classId, name, room, meets, archived }: LineProps) {
  const change = useSaved((fields) => saveClass({ ...fields, classId }))
  const archive = useSaved(() => archiveClass({ classId, archived: !archived }))
  return (
    <div className="grid gap-3">
      {!archived && (
        <ChangeForm name={name} form={change}>
          <TextInput label="Name of the class" name="name" defaultValue={name} error={change.error('name')} />
          <TextInput label="Room (optional)" name="room" defaultValue={room} error={change.error('room')} />
          <TextInput label="Meets (optional)" name="meets" defaultValue={meets} error={change.error('meets')} />
        </ChangeForm>
      )}
      <form method="post" onSubmit={archive.onSubmit} className="grid gap-2">
        {archive.refused && archive.said}
        <div><SendButton busy={archive.busy} kind={archived ? 'secondary' : 'danger'} aria-label={`${archived ? 'Take back' : 'Archive'} ${name}`}>{archived ? 'Take back' : 'Archive'}</SendButton></div>
      </form>
    </div>
  )
}

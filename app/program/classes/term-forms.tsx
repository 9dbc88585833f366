'use client'

import { SendButton } from '@/app/_components/send-button'
import { TextInput } from '@/app/_components/ui/text-input'
import { addTerm, archiveTerm, deleteTerm, saveTerm } from './actions'
import { ChangeForm } from './change-form'
import { useSaved } from './use-saved'

const overlapText = ({ overlaps }: { readonly overlaps: readonly string[] }): string =>
  overlaps.length === 0 ? 'It is in the list.' : `It is in the list. It shares days with ${overlaps.join(' and ')}; change its days if that is not meant.`

/** A new term. */
export function TermForm() {
  const { onSubmit, busy, error, times, said } = useSaved((fields) => addTerm(fields), overlapText)
  return (
    <form key={times} method="post" onSubmit={onSubmit} noValidate className="grid max-w-2xl gap-4">
      <TermBoxes error={error} />
      {said}
      <div><SendButton busy={busy}>{busy ? 'Saving' : 'Make the term'}</SendButton></div>
    </form>
  )
}

type BoxesProps = { readonly error: (box: string) => string | undefined; readonly name?: string; readonly startsOn?: string; readonly endsOn?: string }

function TermBoxes({ error, name, startsOn, endsOn }: BoxesProps) {
  return (
    <>
      <TextInput label="Name of the term" name="name" defaultValue={name} error={error('name')} />
      <div className="grid gap-4 sm:grid-cols-2">
        <TextInput label="First day" name="startsOn" type="date" defaultValue={startsOn} error={error('startsOn')} />
        <TextInput label="Last day" name="endsOn" type="date" defaultValue={endsOn} error={error('endsOn')} />
      </div>
    </>
  )
}

type LineProps = { readonly termId: string; readonly name: string; readonly startsOn: string; readonly endsOn: string; readonly classes: number; readonly archived: boolean }

/** The ways to change one term: its name and days; and archived where it has classes, deleted where it has none. */
export function TermLine({ termId, name, startsOn, endsOn, classes, archived }: LineProps) {
  const change = useSaved((fields) => saveTerm({ ...fields, termId }), overlapText)
  return (
    <div className="grid gap-3">
      {!archived && (
        <ChangeForm name={name} form={change}><TermBoxes error={change.error} name={name} startsOn={startsOn} endsOn={endsOn} /></ChangeForm>
      )}
      {classes === 0 ? <DeleteTerm termId={termId} name={name} /> : <ArchiveTerm termId={termId} name={name} archived={archived} />}
    </div>
  )
}

function ArchiveTerm({ termId, name, archived }: { readonly termId: string; readonly name: string; readonly archived: boolean }) {
  const { onSubmit, busy, refused, said } = useSaved(() => archiveTerm({ termId, archived: !archived }))
  return (
    <form method="post" onSubmit={onSubmit} className="grid gap-2">
      {refused && said}
      <div><SendButton busy={busy} kind={archived ? 'secondary' : 'danger'} aria-label={archived ? `Take back ${name} and its classes` : `Archive ${name} with its classes`}>{archived ? 'Take back' : 'Archive with its classes'}</SendButton></div>
    </form>
  )
}

function DeleteTerm({ termId, name }: { readonly termId: string; readonly name: string }) {
  const { onSubmit, busy, refused, said } = useSaved(() => deleteTerm({ termId }))
  return (
    <form method="post" onSubmit={onSubmit} className="grid gap-2">
      {refused && said}
      <div><SendButton busy={busy} kind="danger" aria-label={`Delete ${name}`}>Delete</SendButton></div>
    </form>
  )
}

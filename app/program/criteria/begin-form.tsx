'use client'

import { useRouter } from 'next/navigation'
import { useState } from 'react'
import { SendButton } from '@/app/_components/send-button'
import { Notice } from '@/app/_components/ui/notice'
import { RadioPills } from '@/app/_components/ui/radio-pills'
import { Select, type Choice } from '@/app/_components/ui/select'
import { TextInput } from '@/app/_components/ui/text-input'
import { useSentForm } from '@/app/_components/use-sent-form'
import { beginCriteria } from './actions'

type BeginFormProps = {
  readonly sets: readonly Choice[]
  readonly units: 'us' | 'si'
  /** The set to copy, where the page is about one. */
  readonly from?: string
}

/** Begins a set as a copy of another, or with nothing. */
export function BeginForm({ sets, units, from = 'shop-bead 1' }: BeginFormProps) {
  const router = useRouter()
  const [chosen, setChosen] = useState(sets.some(({ value }) => value === from) ? from : '')
  const { onSubmit, busy, refused, error } = useSentForm(
    (fields) => beginCriteria({ title: fields['title'], from: fields['from'], system: fields['system'] ?? units }),
    ({ draftId }) => router.push(`/program/criteria/drafts/${draftId}`),
    'It did not get through. Check the connection and try again.',
  )
  return (
    <form method="post" onSubmit={onSubmit} noValidate className="grid max-w-2xl gap-4">
      <TextInput label="Title" name="title" error={error('title')} hint="As the list of criteria names it, like “Shop rule, tight undercut”." />
      <Select
        label="Begin with" name="from" value={chosen} onChange={(event) => setChosen(event.target.value)} error={error('from')}
        choices={[...sets.map(({ value, label }) => ({ value, label: `A copy of ${label}` })), { value: '', label: 'Nothing' }]}
      />
      {chosen === '' && (
        <RadioPills legend="Lengths in" name="system" defaultValue={units} pills={[{ value: 'us', label: 'Inches' }, { value: 'si', label: 'Millimetres' }]} error={error('system') ?? null} />
      )}
      {refused && <Notice kind="problem" word="Not begun" live>{refused.message}</Notice>}
      <div><SendButton kind="primary" busy={busy}>{busy ? 'Beginning' : 'Begin the set'}</SendButton></div>
    </form>
  )
}

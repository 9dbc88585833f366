'use client'

import Link from 'next/link'
import { useState } from 'react'
import { SendButton } from '@/app/_components/send-button'
import { Notice } from '@/app/_components/ui/notice'
import { Select, type Choice } from '@/app/_components/ui/select'
import { TextInput } from '@/app/_components/ui/text-input'
import { useSentForm } from '@/app/_components/use-sent-form'
import { addStaff } from '../actions'

type Made = { readonly personId: string; readonly password: string }

/** Names, sign-in name and a first class. After each one made the form is empty for the next. */
export function InstructorForm({ classes }: { readonly classes: readonly Choice[] }) {
  const [made, setMade] = useState<readonly Made[]>([])
  const { onSubmit, busy, refused, error } = useSentForm<Made>(addStaff, (value) => setMade([...made, value]), 'It did not get through. Check the connection and try again.')
  const latest = made.at(-1)
  return (
    <form key={made.length} method="post" onSubmit={onSubmit} noValidate className="grid max-w-2xl gap-4">
      {refused && <Notice kind="problem" word="Not made" live>{refused.message}</Notice>}
      {!refused && latest && (
        <Notice kind="ok" word="Account made" live>
          <p className="figures text-2xl">{latest.password}</p>
          <p>Read this first password out now: it is shown once. <Link href={`/program/people/person/${latest.personId}`}>Open the account</Link></p>
        </Notice>
      )}
      <div className="grid gap-4 sm:grid-cols-2">
        <TextInput label="Given name" name="givenName" autoComplete="off" error={error('givenName')} />
        <TextInput label="Family name" name="familyName" autoComplete="off" error={error('familyName')} />
      </div>
      <TextInput label="Sign-in name" name="signInName" hint="Small letters, digits, dots and hyphens." autoComplete="off" autoCapitalize="none" spellCheck={false} error={error('signInName')} />
      <Select label="First class" name="classId" choices={[{ value: '', label: 'None yet' }, ...classes]} error={error('classId')} />
      <div><SendButton kind="primary" busy={busy}>{busy ? 'Making the account' : 'Make the account'}</SendButton></div>
    </form>
  )
}

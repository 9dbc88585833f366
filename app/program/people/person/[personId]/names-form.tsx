'use client'

import { useRouter } from 'next/navigation'
import { useState } from 'react'
import { SendButton } from '@/app/_components/send-button'
import { Notice } from '@/app/_components/ui/notice'
import { TextInput } from '@/app/_components/ui/text-input'
import { useSentForm } from '@/app/_components/use-sent-form'
import { saveNames } from '../../actions'

type Props = { readonly personId: string; readonly givenName: string; readonly familyName: string; readonly signInName: string }

/** The names of an account, folded away until they are to be changed. */
export function NamesForm({ personId, givenName, familyName, signInName }: Props) {
  const router = useRouter()
  const [saved, setSaved] = useState(false)
  const { onSubmit, busy, refused, error } = useSentForm<object>((fields) => saveNames({ ...fields, personId }), () => {
    setSaved(true)
    router.refresh()
  }, 'It did not get through. Check the connection and try again.')
  return (
    <details>
      <summary className="flex min-h-12 cursor-pointer items-center underline underline-offset-4">Change the names</summary>
      <form method="post" onSubmit={onSubmit} noValidate className="grid max-w-2xl gap-4 py-2">
        <div className="grid gap-4 sm:grid-cols-2">
          <TextInput label="Given name" name="givenName" defaultValue={givenName} autoComplete="off" error={error('givenName')} />
          <TextInput label="Family name" name="familyName" defaultValue={familyName} autoComplete="off" error={error('familyName')} />
        </div>
        <TextInput label="Sign-in name" name="signInName" defaultValue={signInName} hint="Tell them: from then on only the new one lets them in." autoComplete="off" autoCapitalize="none" spellCheck={false} error={error('signInName')} />
        {refused ? <Notice kind="problem" word="Not saved" live>{refused.message}</Notice> : saved && <Notice kind="ok" word="Saved" live>These are the names now.</Notice>}
        <div><SendButton busy={busy}>{busy ? 'Saving' : 'Save the names'}</SendButton></div>
      </form>
    </details>
  )
}

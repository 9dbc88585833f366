'use client'

import { useRouter } from 'next/navigation'
import { useState } from 'react'
import { door } from '@/lib/language/door'
import { say, type Locale } from '@/lib/language/say'
import { SendButton } from '@/app/_components/send-button'
import { Notice } from '@/app/_components/ui/notice'
import { RadioPills } from '@/app/_components/ui/radio-pills'
import { TextInput } from '@/app/_components/ui/text-input'
import { useSentForm } from '@/app/_components/use-sent-form'
import { changePassword, joinOneMore, leaveElsewhere, savePreferences } from './actions'

/** Language and units. */
export function PreferencesForm({ locale, units }: { readonly locale: Locale; readonly units: 'us' | 'si' }) {
  const router = useRouter()
  const [saved, setSaved] = useState(false)
  const { onSubmit, busy, refused } = useSentForm((fields) => savePreferences(fields), () => {
    setSaved(true)
    router.refresh()
  }, say(door, locale, 'failed'))
  return (
    <form method="post" onSubmit={onSubmit} className="grid gap-5">
      {refused && <Notice kind="problem" word={say(door, locale, 'notSaved')} live>{Object.keys(refused.fields).length > 0 ? say(door, locale, 'fix') : refused.message}</Notice>}
      {saved && !refused && <Notice kind="ok" word={say(door, locale, 'saved')} live>{say(door, locale, 'savedText')}</Notice>}
      <RadioPills legend={say(door, locale, 'language')} name="locale" defaultValue={locale} pills={[{ value: 'en', label: 'English' }, { value: 'es', label: 'Español' }]} />
      <RadioPills
        legend={say(door, locale, 'units')} name="units" defaultValue={units}
        pills={[{ value: 'us', label: say(door, locale, 'inches') }, { value: 'si', label: say(door, locale, 'millimetres') }]}
      />
      <div><SendButton kind="primary" busy={busy}>{say(door, locale, busy ? 'saving' : 'save')}</SendButton></div>
    </form>
  )
}

/** One's own password. */
export function PasswordForm({ locale, signInName }: { readonly locale: Locale; readonly signInName: string }) {
  const router = useRouter()
  const [changed, setChanged] = useState(false)
  const { onSubmit, busy, refused, error } = useSentForm((fields) => changePassword({ current: fields['current'], password: fields['password'] }), () => {
    setChanged(true)
    router.refresh()
  }, say(door, locale, 'failed'))
  return (
    <form method="post" onSubmit={onSubmit} className="grid gap-5" noValidate>
      {refused && <Notice kind="problem" word={say(door, locale, 'notSaved')} live>{Object.keys(refused.fields).length > 0 ? say(door, locale, 'fix') : refused.message}</Notice>}
      {changed && !refused && <Notice kind="ok" word={say(door, locale, 'saved')} live>{say(door, locale, 'passwordChanged')}</Notice>}
      <input type="hidden" name="signInName" autoComplete="username" value={signInName} />
      <TextInput label={say(door, locale, 'currentPassword')} error={error('current')} name="current" type="password" autoComplete="current-password" />
      <TextInput label={say(door, locale, 'newPassword')} hint={say(door, locale, 'passwordHint')} error={error('password')} name="password" type="password" autoComplete="new-password" />
      <div><SendButton kind="primary" busy={busy}>{say(door, locale, busy ? 'saving' : 'changePassword')}</SendButton></div>
    </form>
  )
}

/** One more class. */
export function JoinOneMoreForm({ locale }: { readonly locale: Locale }) {
  const router = useRouter()
  const { onSubmit, busy, refused, error } = useSentForm((fields) => joinOneMore(fields), () => router.push('/learn'), say(door, locale, 'failed'))
  return (
    <form method="post" onSubmit={onSubmit} className="grid gap-5" noValidate>
      {refused && <Notice kind="problem" word={say(door, locale, 'notJoined')} live>{Object.keys(refused.fields).length > 0 ? say(door, locale, 'fix') : refused.message}</Notice>}
      <TextInput label={say(door, locale, 'code')} hint={say(door, locale, 'codeHint')} error={error('code')} name="code" figures autoCapitalize="characters" autoComplete="off" spellCheck={false} />
      <div><SendButton busy={busy}>{say(door, locale, busy ? 'joining' : 'join')}</SendButton></div>
    </form>
  )
}

/** Where one is signed in, and the way to end all of it but here. */
export function SessionList({ locale, sessions }: { readonly locale: Locale; readonly sessions: readonly { readonly id: string; readonly text: string }[] }) {
  const router = useRouter()
  const [left, setLeft] = useState(false)
  const { onSubmit, busy, refused } = useSentForm(() => leaveElsewhere({}), () => {
    setLeft(true)
    router.refresh()
  }, say(door, locale, 'failed'))
  return (
    <form method="post" onSubmit={onSubmit} className="grid gap-4">
      <ul className="list-disc pl-5">{sessions.map((session) => <li key={session.id}>{session.text}</li>)}</ul>
      {refused && <Notice kind="problem" word={say(door, locale, 'notSaved')} live>{refused.message}</Notice>}
      {left && !refused && <Notice kind="ok" word={say(door, locale, 'saved')} live>{say(door, locale, 'leftElsewhere')}</Notice>}
      {sessions.length > 1 && <div><SendButton busy={busy}>{say(door, locale, 'leaveElsewhere')}</SendButton></div>}
    </form>
  )
}

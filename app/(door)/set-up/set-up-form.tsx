'use client'

import { useRouter } from 'next/navigation'
import { useSyncExternalStore } from 'react'
import { door } from '@/lib/language/door'
import { say, type Locale } from '@/lib/language/say'
import { SendButton } from '@/app/_components/send-button'
import { Notice } from '@/app/_components/ui/notice'
import { RadioPills } from '@/app/_components/ui/radio-pills'
import { TextInput } from '@/app/_components/ui/text-input'
import { useSentForm } from '@/app/_components/use-sent-form'
import { setUp } from '../actions'

const browserZone = (): string => Intl.DateTimeFormat().resolvedOptions().timeZone

/** The program and its coordinator, once. */
export function SetUpForm({ locale }: { readonly locale: Locale }) {
  const router = useRouter()
  const zone = useSyncExternalStore(() => () => {}, browserZone, () => '')
  const { onSubmit, busy, refused, error } = useSentForm((fields) => setUp(fields), () => router.push('/program'), say(door, locale, 'failed'))
  return (
    <form method="post" onSubmit={onSubmit} className="grid gap-5" noValidate>
      {refused && <Notice kind="problem" word={say(door, locale, 'notSetUp')} live>{refused.message}</Notice>}
      <TextInput label={say(door, locale, 'setupCode')} hint={say(door, locale, 'setupCodeHint')} error={error('setupCode')} name="setupCode" figures autoComplete="off" spellCheck={false} />
      <TextInput label={say(door, locale, 'programName')} error={error('programName')} name="programName" autoComplete="organization" />
      <TextInput key={zone} label={say(door, locale, 'timeZone')} error={error('timeZone')} name="timeZone" defaultValue={zone} spellCheck={false} />
      <RadioPills
        legend={say(door, locale, 'units')} name="units" defaultValue="us"
        pills={[{ value: 'us', label: say(door, locale, 'inches') }, { value: 'si', label: say(door, locale, 'millimetres') }]}
      />
      <TextInput label={say(door, locale, 'givenName')} error={error('givenName')} name="givenName" autoComplete="given-name" />
      <TextInput label={say(door, locale, 'familyName')} error={error('familyName')} name="familyName" autoComplete="family-name" />
      <TextInput label={say(door, locale, 'signInName')} hint={say(door, locale, 'signInNameHint')} error={error('signInName')} name="signInName" autoComplete="username" autoCapitalize="none" spellCheck={false} />
      <TextInput label={say(door, locale, 'password')} hint={say(door, locale, 'passwordHint')} error={error('password')} name="password" type="password" autoComplete="new-password" />
      <div><SendButton kind="primary" busy={busy}>{say(door, locale, busy ? 'settingUp' : 'setUp')}</SendButton></div>
    </form>
  )
}

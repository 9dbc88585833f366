'use client'

import { useState } from 'react'
import { classLife } from '@/lib/language/class-life'
import { door } from '@/lib/language/door'
import { say, type Locale } from '@/lib/language/say'
import { SendButton } from '@/app/_components/send-button'
import { Notice } from '@/app/_components/ui/notice'
import { TextInput } from '@/app/_components/ui/text-input'
import { useSentForm } from '@/app/_components/use-sent-form'
import { savePin } from './actions'

/** One's own PIN for a shared tablet. */
export function PinForm({ locale, isSet, asksPassword }: { readonly locale: Locale; readonly isSet: boolean; readonly asksPassword: boolean }) {
  const [times, setTimes] = useState(0)
  const saved = times > 0
  const { onSubmit, busy, refused, error } = useSentForm((fields) => savePin({ current: '', ...fields }), () => setTimes(times + 1), say(door, locale, 'failed'))
  return (
    <form method="post" onSubmit={onSubmit} className="grid gap-5" noValidate>
      <p>{say(classLife, locale, 'pinOwnLead')}{(isSet || saved) && ` ${say(classLife, locale, 'pinIsSet')}`}</p>
      {refused && <Notice kind="problem" word={say(door, locale, 'notSaved')} live>{Object.keys(refused.fields).length > 0 ? say(door, locale, 'fix') : refused.message}</Notice>}
      {saved && !refused && <Notice kind="ok" word={say(door, locale, 'saved')} live>{say(classLife, locale, 'pinSaved')}</Notice>}
      {/* Emptied once saved: a password left in its box would serve whoever holds the phone next. */}
      {asksPassword && <TextInput key={`current ${times}`} label={say(door, locale, 'currentPassword')} hint={say(classLife, locale, 'pinWhyPassword')} error={error('current')} name="current" type="password" autoComplete="current-password" />}
      <TextInput key={`pin ${times}`} label={say(classLife, locale, 'pinNew')} hint={say(classLife, locale, 'pinDigits')} error={error('pin')} name="pin" type="password" inputMode="numeric" autoComplete="off" figures />
      <div><SendButton kind="primary" busy={busy}>{busy ? say(door, locale, 'saving') : say(classLife, locale, 'pinSave')}</SendButton></div>
    </form>
  )
}

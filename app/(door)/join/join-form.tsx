'use client'

import { useRouter } from 'next/navigation'
import { door } from '@/lib/language/door'
import { say, type Locale } from '@/lib/language/say'
import { SendButton } from '@/app/_components/send-button'
import { Notice } from '@/app/_components/ui/notice'
import { TextInput } from '@/app/_components/ui/text-input'
import { useSentForm } from '@/app/_components/use-sent-form'
import { join } from '../actions'

type Props = { readonly locale: Locale; readonly program: { readonly ask: boolean; readonly slug: string }; readonly code: string }

/** A newcomer's account and class in one form. */
export function JoinForm({ locale, program, code }: Props) {
  const router = useRouter()
  const { onSubmit, busy, refused, error } = useSentForm(
    (fields) => join({ ...fields, program: fields['program'] || null, locale }),
    () => router.push('/learn'),
    say(door, locale, 'failed'),
  )
  return (
    <form method="post" onSubmit={onSubmit} className="grid gap-5" noValidate>
      {refused && <Notice kind="problem" word={say(door, locale, 'notJoined')} live>{Object.keys(refused.fields).length > 0 ? say(door, locale, 'fix') : refused.message}</Notice>}
      {program.ask && <TextInput label={say(door, locale, 'program')} hint={say(door, locale, 'programHint')} error={error('program')} name="program" defaultValue={program.slug} />}
      <TextInput label={say(door, locale, 'code')} hint={say(door, locale, 'codeHint')} error={error('code')} name="code" defaultValue={code} figures autoCapitalize="characters" autoComplete="off" spellCheck={false} />
      <TextInput label={say(door, locale, 'givenName')} error={error('givenName')} name="givenName" autoComplete="given-name" />
      <TextInput label={say(door, locale, 'familyName')} error={error('familyName')} name="familyName" autoComplete="family-name" />
      <TextInput label={say(door, locale, 'signInName')} hint={say(door, locale, 'signInNameHint')} error={error('signInName')} name="signInName" autoComplete="username" autoCapitalize="none" spellCheck={false} />
      <TextInput label={say(door, locale, 'password')} hint={say(door, locale, 'passwordHint')} error={error('password')} name="password" type="password" autoComplete="new-password" />
      <div><SendButton kind="primary" busy={busy}>{say(door, locale, busy ? 'joining' : 'join')}</SendButton></div>
    </form>
  )
}

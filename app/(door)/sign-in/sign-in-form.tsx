'use client'

import { useState, type FormEvent } from 'react'
import { door } from '@/lib/language/door'
import { say, type Locale } from '@/lib/language/say'
import { SendButton } from '@/app/_components/send-button'
import { Button } from '@/app/_components/ui/button'
import { Notice } from '@/app/_components/ui/notice'
import { TextInput } from '@/app/_components/ui/text-input'
import { postSignIn } from '@/app/_components/sign-in'

type Trouble = 'wrong' | 'throttled' | 'failed' | 'unlinked'
type Props = {
  readonly locale: Locale
  /** Asked for only where the server holds several programs. */
  readonly program: { readonly ask: boolean; readonly slug: string }
  readonly back: string
  readonly trouble: Trouble | null
}

/** Name and password. What was typed stays when it is refused. */
export function SignInForm({ locale, program, back, trouble: before }: Props) {
  const [trouble, setTrouble] = useState<Trouble | null>(before)
  const [busy, setBusy] = useState(false)
  const [shown, setShown] = useState(false)

  async function send(event: FormEvent<HTMLFormElement>): Promise<void> {
    event.preventDefault()
    const form = new FormData(event.currentTarget)
    const text = (name: string): string => String(form.get(name) ?? '')
    setBusy(true)
    const refused = await postSignIn({ program: text('program'), signInName: text('signInName'), password: text('password') })
    if (refused === null) window.location.assign(back)
    else {
      setTrouble(refused)
      setBusy(false)
    }
  }

  return (
    <form method="post" onSubmit={(event) => void send(event)} className="grid gap-5">
      {trouble && <Notice kind="problem" word={say(door, locale, 'notSignedIn')} live>{say(door, locale, trouble)}</Notice>}
      {program.ask && (
        <TextInput label={say(door, locale, 'program')} hint={say(door, locale, 'programHint')} name="program" defaultValue={program.slug} autoCapitalize="none" required />
      )}
      <TextInput label={say(door, locale, 'signInName')} name="signInName" autoComplete="username" autoCapitalize="none" spellCheck={false} required />
      <TextInput label={say(door, locale, 'password')} name="password" type={shown ? 'text' : 'password'} autoComplete="current-password" required />
      <div className="flex flex-wrap gap-2">
        <SendButton kind="primary" busy={busy}>{say(door, locale, busy ? 'signingIn' : 'signIn')}</SendButton>
        <Button aria-pressed={shown} onClick={() => setShown(!shown)}>{say(door, locale, shown ? 'hide' : 'show')}</Button>
      </div>
    </form>
  )
}

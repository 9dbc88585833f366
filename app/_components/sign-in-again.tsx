'use client'

import { useState } from 'react'
import { door } from '@/lib/language/door'
import { say, type Locale } from '@/lib/language/say'
import { postSignIn } from './sign-in'
import { Button } from './ui/button'
import { buttonLook } from './ui/button-look'
import { Notice } from './ui/notice'
import { TextInput } from './ui/text-input'

/** Who filled the form in: only they can send it, so nobody else's name can be typed on a shared tablet. */
export type SignedInBefore = { readonly signInName: string; readonly program: string }
/** `door` is where this person signs in: on a shared tablet a password has no place. */
type Props = { readonly locale: Locale; readonly who: SignedInBefore; readonly door?: '/sign-in' | '/tablet'; readonly onSignedIn: () => void }

/** What to do in a form whose session ended while it was being filled in. */
export function SignInAgain(props: Props) {
  return props.door === '/tablet' ? <TurnOver locale={props.locale} /> : <AskPassword {...props} />
}

/** On a shared tablet: back to the names. What was typed lies on the tablet under the person who typed it. */
function TurnOver({ locale }: { readonly locale: Locale }) {
  const names = `/tablet?back=${encodeURIComponent(window.location.pathname)}`
  return (
    <Notice kind="problem" word={say(door, locale, 'turnOverTitle')} live>
      <p>{say(door, locale, 'turnOverText')}</p>
      <div className="mt-3"><a href={names} className={buttonLook('primary', 'shop', false)}>{say(door, locale, 'toNames')}</a></div>
    </Notice>
  )
}

/**
 * Inside a form whose session ended while it was being filled in: signs in again without leaving the page.
 * It is no form of its own, because it stands inside one.
 */
function AskPassword({ locale, who, onSignedIn }: Props) {
  const [password, setPassword] = useState('')
  const [trouble, setTrouble] = useState<'wrong' | 'throttled' | 'failed' | null>(null)
  const [busy, setBusy] = useState(false)

  async function send(): Promise<void> {
    setBusy(true)
    const refused = await postSignIn({ ...who, password })
    setBusy(false)
    setTrouble(refused)
    if (refused === null) onSignedIn()
  }

  return (
    <Notice kind="problem" word={say(door, locale, 'signedOutTitle')} live>
      <p>{say(door, locale, trouble ?? 'signedOutText')}</p>
      <div className="mt-3 grid max-w-prose gap-3">
        <p>{say(door, locale, 'signedInAs', { name: who.signInName })}</p>
        <TextInput label={say(door, locale, 'password')} type="password" value={password} onChange={(event) => setPassword(event.target.value)} autoComplete="current-password"
          onKeyDown={(event) => { if (event.key === 'Enter') { event.preventDefault(); void (busy || send()) } }} />
      </div>
      <div className="mt-3"><Button kind="primary" onClick={() => void (busy || send())}>{say(door, locale, busy ? 'signingIn' : 'signIn')}</Button></div>
    </Notice>
  )
}

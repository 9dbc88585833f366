'use client'

import { useRef, useState } from 'react'
import { classLife } from '@/lib/language/class-life'
import { door } from '@/lib/language/door'
import { say, type Locale } from '@/lib/language/say'
import { MOST_PIN } from '@/lib/schemas/pin-length'
import { SendButton } from '@/app/_components/send-button'
import { Button } from '@/app/_components/ui/button'
import { Notice } from '@/app/_components/ui/notice'
import { TextInput } from '@/app/_components/ui/text-input'
import { useHydrated } from '@/app/_components/use-hydrated'
import { useSentForm } from '@/app/_components/use-sent-form'
import { tabletSignIn } from './actions'

const DIGITS = ['1', '2', '3', '4', '5', '6', '7', '8', '9', '0'] as const

/** The PIN, typed or pressed on large keys. */
export function PinForm({ locale, personId, back }: { readonly locale: Locale; readonly personId: string; readonly back: string }) {
  const [pin, setPin] = useState('')
  const hydrated = useHydrated()
  const input = useRef<HTMLInputElement>(null)
  const { onSubmit, busy, refused } = useSentForm(
    async (fields) => {
      const answer = await tabletSignIn({ ...fields, personId, locale })
      if (!answer.ok) {
        setPin('')
        input.current?.focus()
      }
      return answer
    },
    // A whole new page: nothing of the person before stays in this one's memory.
    () => window.location.assign(back),
    say(door, locale, 'failed'),
  )
  return (
    <form method="post" onSubmit={onSubmit} className="grid gap-5" noValidate>
      {refused && <Notice kind="problem" word={say(door, locale, 'notSignedIn')} live>{refused.message}</Notice>}
      <TextInput
        ref={input} label={say(classLife, locale, 'pin')} hint={say(classLife, locale, 'pinLead')} name="pin" type="password" inputMode="numeric" autoComplete="off"
        maxLength={MOST_PIN} figures value={pin} onChange={(event) => setPin(event.target.value)}
      />
      <div className="grid max-w-80 grid-cols-3 gap-2">
        {DIGITS.map((digit) => <Button key={digit} wide disabled={!hydrated} onClick={() => setPin(`${pin}${digit}`.slice(0, MOST_PIN))}>{digit}</Button>)}
        <div className="col-span-2"><Button wide disabled={!hydrated} onClick={() => setPin(pin.slice(0, -1))}>{say(classLife, locale, 'pinErase')}</Button></div>
      </div>
      <div><SendButton kind="primary" busy={busy}>{say(classLife, locale, busy ? 'entering' : 'enter')}</SendButton></div>
    </form>
  )
}

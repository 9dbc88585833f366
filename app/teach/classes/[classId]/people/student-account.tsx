'use client'

import Link from 'next/link'
import { AskFirst, textOf } from '@/app/_components/ask-first'
import { resetPassword } from '@/app/teach/actions'
import { newPin } from '../tablet/actions'

type Props = {
  readonly studentId: string
  readonly name: string
  readonly facts: string
  readonly hasPassword: boolean
  readonly hasPin: boolean
  /** In the class now, with an account that may sign in. */
  readonly open: boolean
  /** The coordinator alone resets the password of somebody who is staff as well. */
  readonly staff: boolean
}

/** One student of a class, with a first password and a PIN to be read out. */
export function StudentAccount({ studentId, name, facts, hasPassword, hasPin, open, staff }: Props) {
  return (
    <li className="grid gap-3 py-3 md:grid-cols-[1fr_auto]">
      <div>
        <Link href={`/teach/students/${studentId}`} className="inline-flex min-h-12 items-center font-bold underline">{name}</Link>
        <span className="block text-base text-ink-2">{facts}</span>
      </div>
      {open && (
        <div className="flex flex-wrap items-start gap-2 md:max-w-2xl md:justify-end">
          {!staff && (
            <AskFirst
              label={hasPassword ? 'Reset the password' : 'Make a first password'} fullLabel={`${hasPassword ? 'Reset the password' : 'Make a first password'} of ${name}`}
              {...(hasPassword && { sure: `Sign ${name} out everywhere and reset`, keep: 'Keep the password' })} send={() => resetPassword({ studentId })}
              done={(value) => ({ word: 'New first password', secret: textOf(value, 'password'), text: `Read it out now: it is shown once. At the next sign-in ${name} chooses a new one.` })}
            />
          )}
          <AskFirst
            label={hasPin ? 'New PIN' : 'Make a PIN'} fullLabel={`${hasPin ? 'New PIN' : 'Make a PIN'} for ${name}`}
            {...(hasPin && { sure: `End the old PIN of ${name} and make one`, keep: 'Keep the PIN' })} send={() => newPin({ studentId })}
            done={(value) => ({ word: `PIN of ${name}`, secret: textOf(value, 'pin'), text: 'Read it out now: it is shown once.' })}
          />
        </div>
      )}
    </li>
  )
}

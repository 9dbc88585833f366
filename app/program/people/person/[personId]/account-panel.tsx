'use client'

import { AskFirst, textOf } from '@/app/_components/ask-first'
import { disableAccount, newPassword, newPin, signOutEverywhere } from '../../actions'

type Props = {
  readonly personId: string
  readonly name: string
  readonly disabled: boolean
  readonly hasPassword: boolean
  /** A student signs in on shared tablets with a PIN; null for everyone else. */
  readonly pin: 'set' | 'none' | null
  /** An instructor opens shared tablets, which close with the account. */
  readonly instructor: boolean
}

/** What the coordinator can do to someone else's account; each asks first where something ends by it. */
export function AccountPanel({ personId, name, disabled, hasPassword, pin, instructor }: Props) {
  return (
    <section aria-labelledby="account" className="grid gap-4">
      <h2 id="account" className="text-2xl">Account</h2>
      <AskFirst
        label={hasPassword ? 'Reset the password' : 'Make a first password'} sure={`Sign ${name} out everywhere and make a new password`} keep={hasPassword ? 'Keep the password' : 'Not now'}
        send={() => newPassword({ personId })}
        done={(value) => ({ word: 'New first password', secret: textOf(value, 'password'), text: `Read it out now: it is shown once. At the next sign-in ${name} chooses a new one.` })}
      />
      {pin !== null && (
        <AskFirst
          label={pin === 'set' ? 'New tablet PIN' : 'Make a tablet PIN'} {...(pin === 'set' && { sure: `End the old PIN of ${name} and make one`, keep: 'Keep the PIN' })}
          send={() => newPin({ personId })} done={(value) => ({ word: `PIN of ${name}`, secret: textOf(value, 'pin'), text: 'Read it out now: it is shown once.' })}
        />
      )}
      <AskFirst
        label="Sign out everywhere" sure={`Sign ${name} out of every device`} keep="Leave the sessions" send={() => signOutEverywhere({ personId })}
        done={() => ({ word: 'Signed out', text: 'Every session has ended.' })}
      />
      {instructor && !disabled && <p className="text-base text-ink-2">Disabling the account also closes the shared tablets {name} opened; another instructor of the class opens them again on the device.</p>}
      <AskFirst
        label={disabled ? 'Enable the account' : 'Disable the account'} {...(!disabled && { sure: `Sign ${name} out and let them in no more`, keep: 'Leave it enabled' })}
        send={() => disableAccount({ personId, disabled: !disabled })}
        done={() => (disabled ? { word: 'Enabled', text: `${name} can sign in again.` } : { word: 'Disabled', text: `${name} is signed out and cannot sign in. The record stays.${instructor ? ' The shared tablets they opened are closed.' : ''}` })}
      />
    </section>
  )
}

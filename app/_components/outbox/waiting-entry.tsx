'use client'

import { useRouter } from 'next/navigation'
import { useState } from 'react'
import { offline } from '@/lib/language/offline'
import { savedHere } from '@/lib/language/saved-here'
import { say, type Locale } from '@/lib/language/say'
import type { OutboxEntry } from '@/lib/outbox/outbox-entry'
import { Button } from '@/app/_components/ui/button'
import { LinkButton } from '@/app/_components/ui/link-button'
import { restoreDraft } from './draft-of-entry'
import { entryFacts } from './entry-facts'
import { removeEntry, reopenEntry, sendAgain } from './outbox'
import { deviceMoment } from './outbox-words'

const STATE_WORD = { waiting: 'stateWaiting', refused: 'stateRefused', reopened: 'stateReopened' } as const

/** One coupon on the device: what it is, why it is still here, and what to do with it when it was refused. */
export function WaitingEntry({ entry, locale }: { readonly entry: OutboxEntry; readonly locale: Locale }) {
  const router = useRouter()
  const { state, number } = entry
  const logged = number !== null

  async function correct(): Promise<void> {
    restoreDraft(entry)
    await reopenEntry(entry.id)
    router.push(entry.about.href)
  }

  return (
    <li className="grid gap-2 border border-line bg-plate p-4">
      <h2 className="text-xl">{entry.about.exercise}</h2>
      <p>
        <span className="font-bold">{say(offline, locale, STATE_WORD[state])}</span>
        {' · '}{say(savedHere, locale, 'logged', { when: deviceMoment(entry.createdAt, locale) })}{' · '}{entryFacts(entry, locale)}
      </p>
      {logged && <p>{say(offline, locale, state === 'refused' ? 'photoRefused' : 'photoOnly', { number })}</p>}
      {entry.refusal && state !== 'waiting' && <Reasons refusal={entry.refusal} locale={locale} />}
      {state === 'reopened' && <p>{say(offline, locale, 'reopenedText')}</p>}
      {state !== 'waiting' && (
        <div className="flex flex-wrap gap-2">
          {logged ? <LinkButton href={`/learn/coupons/${entry.id}`}>{say(savedHere, locale, 'seeResult')}</LinkButton> : <Button kind="primary" onClick={() => void correct()}>{say(offline, locale, 'correct')}</Button>}
          <Button onClick={() => void sendAgain(entry.id)}>{say(offline, locale, 'sendAgain')}</Button>
          <ThrowAway entry={entry} locale={locale} />
        </div>
      )}
    </li>
  )
}

function Reasons({ refusal, locale }: { readonly refusal: NonNullable<OutboxEntry['refusal']>; readonly locale: Locale }) {
  const sentences = [...new Set(Object.values(refusal.fields))]
  return (
    <>
      <p>{refusal.code === 'FAILED' ? say(offline, locale, 'failedTooOften') : refusal.message}</p>
      {sentences.length > 0 && <ul className="list-disc pl-5">{sentences.map((sentence) => <li key={sentence}>{sentence}</li>)}</ul>}
    </>
  )
}

/** Gone only at the second press, after saying what that means. */
function ThrowAway({ entry, locale }: { readonly entry: OutboxEntry; readonly locale: Locale }) {
  const [asked, setAsked] = useState(false)
  const logged = entry.number !== null
  return (
    <>
      <Button onClick={() => (asked ? void removeEntry(entry.id) : setAsked(true))}>
        {say(offline, locale, asked ? (logged ? 'throwPhotoSure' : 'throwAwaySure') : logged ? 'throwPhotoAway' : 'throwAway')}
      </Button>
      <p role="status" className="basis-full">{asked && say(offline, locale, logged ? 'throwPhotoHint' : 'throwAwayHint')}</p>
    </>
  )
}

'use client'

import { useEffect, useRef } from 'react'
import { savedHere } from '@/lib/language/saved-here'
import { say, type Locale } from '@/lib/language/say'
import { Button } from '@/app/_components/ui/button'
import { LinkButton } from '@/app/_components/ui/link-button'
import { Notice } from '@/app/_components/ui/notice'
import { entryFacts } from './entry-facts'
import { deviceMoment } from './outbox-words'
import { useOutbox } from './use-outbox'

type Props = { readonly locale: Locale; readonly couponId: string; readonly onNext: () => void }

/** In place of the form once its coupon is kept on the device: what was logged, that it is safe, and what comes next. It says so when it is sent. */
export function SavedHere({ locale, couponId, onNext }: Props) {
  const { entries, arrived, lasting, sending, end } = useOutbox()
  const entry = entries.find(({ id }) => id === couponId)
  const sent = arrived.has(couponId) || !entry
  // A try that follows one that got nowhere is no news.
  const onItsWay = sending && end !== 'unreachable' && end !== 'failed'
  const place = useRef<HTMLDivElement>(null)
  useEffect(() => place.current?.focus(), [])
  return (
    <div ref={place} tabIndex={-1} className="grid gap-6 outline-none">
      <Notice kind={sent || lasting ? 'ok' : 'info'} word={say(savedHere, locale, sent ? 'savedSent' : lasting ? 'savedTitle' : 'heldTitle')} live>
        <p>{say(savedHere, locale, sent ? 'savedSentText' : !lasting ? 'savedNotLasting' : onItsWay ? 'savedSending' : 'savedText')}</p>
      </Notice>
      {entry && (
        <p>
          <span className="block font-head text-xl font-semibold">{entry.about.exercise}</span>
          <span className="block">{say(savedHere, locale, 'logged', { when: deviceMoment(entry.createdAt, locale) })}</span>
          <span className="block">{entryFacts(entry, locale)}</span>
        </p>
      )}
      <div className="flex flex-wrap gap-2">
        <Button kind="primary" onClick={onNext}>{say(savedHere, locale, 'logNextOne')}</Button>
        {sent ? <LinkButton href={`/learn/coupons/${couponId}`}>{say(savedHere, locale, 'seeResult')}</LinkButton> : <LinkButton href="/learn/waiting">{say(savedHere, locale, 'seeWaiting')}</LinkButton>}
      </div>
    </div>
  )
}

/** Neither kept nor sent: the device is full and there is no connection. Everything typed is still in the form. */
export function NoRoom({ locale, photo, onWithoutPhoto }: { readonly locale: Locale; readonly photo: boolean; readonly onWithoutPhoto: () => void }) {
  return (
    <Notice kind="problem" word={say(savedHere, locale, 'fullTitle')} live>
      <p>{say(savedHere, locale, photo ? 'fullPhotoText' : 'fullText')}</p>
      {photo && <div className="mt-3"><Button onClick={onWithoutPhoto}>{say(savedHere, locale, 'withoutPhoto')}</Button></div>}
    </Notice>
  )
}

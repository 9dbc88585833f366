'use client'

import { offline } from '@/lib/language/offline'
import { say, type Locale } from '@/lib/language/say'
import { summarizeQueue } from '@/lib/outbox/queue-summary'
import { SignInAgain } from '@/app/_components/sign-in-again'
import { Button } from '@/app/_components/ui/button'
import { EmptyState } from '@/app/_components/ui/empty-state'
import { LinkButton } from '@/app/_components/ui/link-button'
import { Notice } from '@/app/_components/ui/notice'
import { sendOutbox, type OutboxPerson } from './outbox'
import { othersText } from './outbox-words'
import { useOutbox } from './use-outbox'
import { WaitingEntry } from './waiting-entry'

type Props = { readonly locale: Locale; readonly person: OutboxPerson; readonly door: '/sign-in' | '/tablet' }

/** Everything of the person's own that is on this device only, oldest first, with what can be done about it. */
export function WaitingList({ locale, person, door }: Props) {
  const { entries, sending, end } = useOutbox()
  const { waiting, kept, others } = summarizeQueue(entries, person.personId)
  const own = entries.filter(({ personId }) => personId === person.personId)
  return (
    <div className="grid gap-6">
      {end === 'signed-out' && waiting.length > 0 && <SignInAgain locale={locale} who={person} door={door} onSignedIn={() => void sendOutbox()} />}
      {(end === 'unreachable' || end === 'failed') && waiting.length > 0 && !sending && <p role="status">{say(offline, locale, 'lastTryFailed')}</p>}
      {waiting.length > 0 && <div><Button kind="primary" aria-disabled={sending || undefined} onClick={() => void (sending || sendOutbox())}>{say(offline, locale, sending ? 'sendingNow' : 'sendNow')}</Button></div>}
      {waiting.length + kept.length === 0 ? (
        <EmptyState title={say(offline, locale, 'noneWaiting')} action={<LinkButton kind="primary" href="/learn">{say(offline, locale, 'toPractice')}</LinkButton>}>
          <p>{say(offline, locale, 'noneWaitingText')}</p>
        </EmptyState>
      ) : (
        <ol className="grid gap-4">{own.map((entry) => <WaitingEntry key={entry.id} entry={entry} locale={locale} />)}</ol>
      )}
      {others.length > 0 && <Notice kind="info" word={say(offline, locale, 'stateWaiting')}>{others.map((each) => <p key={each.signInName}>{othersText(locale, each)}</p>)}</Notice>}
    </div>
  )
}

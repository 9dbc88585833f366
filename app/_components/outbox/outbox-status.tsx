'use client'

import Link from 'next/link'
import { usePathname, useRouter } from 'next/navigation'
import { useEffect, useRef, useSyncExternalStore } from 'react'
import { outboxLine } from '@/lib/language/outbox-line'
import { say, type Locale } from '@/lib/language/say'
import { summarizeQueue } from '@/lib/outbox/queue-summary'
import { startOutbox, type OutboxPerson } from './outbox'
import { counted, deviceMoment, othersText } from './outbox-words'
import { useOutbox } from './use-outbox'

type Props = { readonly locale: Locale; readonly person: OutboxPerson; readonly door: '/sign-in' | '/tablet' }

const LIST = '/learn/waiting'

/** The line over every page of the student's room: what waits on this device, and whether this page is a copy. Nothing when there is nothing to say. */
export function OutboxStatus({ locale, person, door }: Props) {
  const { personId, signInName, program } = person
  useEffect(() => startOutbox({ personId, signInName, program }), [personId, signInName, program])
  const here = usePathname()
  const copy = useCopyOf(here)
  const { entries, sending, end, lasting } = useOutbox()
  useFresh(entries.some(({ id }) => here.endsWith(id)))
  const { waiting, kept, others } = summarizeQueue(entries, personId)
  const keptElsewhere = kept.filter(({ state, about }) => state === 'refused' || about.href !== here)
  // The one coupon that was just sent from the form is the form's to speak of.
  const first = sending && waiting.length === 1 && (waiting[0]?.attempts ?? 0) <= 1
  const lines = [
    copy !== null && say(outboxLine, locale, 'copy', { when: deviceMoment(copy, locale) }),
    waiting.length > 0 && !first && (sending ? counted(locale, waiting.length, 'oneSending', 'manySending') : lasting ? counted(locale, waiting.length, 'oneWaits', 'manyWait') : counted(locale, waiting.length, 'oneHeld', 'manyHeld')),
    waiting.length > 0 && !lasting && say(outboxLine, locale, 'notLasting'),
    waiting.length > 0 && end === 'other-person' && say(outboxLine, locale, 'otherSignedIn', { name: signInName }),
    ...others.map((each) => othersText(locale, each)),
  ].filter((line) => line !== false)
  const way = waiting.length === 0 ? null
    : end === 'signed-out' ? { text: 'signInToSend', link: 'signInLink', href: `${door}?back=${encodeURIComponent(here)}` } as const
    : end === 'new-password' ? { text: 'newPasswordToSend', link: 'chooseLink', href: '/account' } as const : null
  const anything = lines.length > 0 || way !== null || keptElsewhere.length > 0
  return (
    <div role="status" className={anything ? 'mb-6 grid gap-1 border-l-[6px] border-ink bg-plate px-4 py-2 print:hidden' : undefined}>
      {lines.map((line) => <p key={line} className="py-1">{line}</p>)}
      {way && <p className="py-1">{say(outboxLine, locale, way.text)}</p>}
      {anything && (
        <div className="flex flex-wrap gap-x-6">
          {way && <a href={way.href} className="inline-flex min-h-12 min-w-12 items-center">{say(outboxLine, locale, way.link)}</a>}
          {keptElsewhere.length > 0 && here !== LIST && <Link href={LIST} prefetch={false} className="inline-flex min-h-12 items-center">{counted(locale, keptElsewhere.length, 'oneKept', 'manyKept')}</Link>}
          {keptElsewhere.length === 0 && waiting.length > 0 && !first && here !== LIST && <Link href={LIST} prefetch={false} className="inline-flex min-h-12 items-center">{say(outboxLine, locale, 'seeWaiting')}</Link>}
        </div>
      )}
    </div>
  )
}

/** A coupon's page that is open while its photo was still on the way is drawn anew once nothing of it is left here. */
function useFresh(isOpenHere: boolean): void {
  const router = useRouter()
  const was = useRef(false)
  useEffect(() => {
    if (was.current && !isOpenHere) router.refresh()
    was.current = isOpenHere
  }, [isOpenHere, router])
}

type Copy = { readonly path: string; readonly at: number } | null
let copyRead: Copy | undefined

/** What the worker wrote into the page it served from its copies: which page, and when the copy was made. */
function copyMark(): Copy {
  if (copyRead === undefined) {
    const at = Date.parse(document.querySelector<HTMLMetaElement>('meta[name="toeline-copy"]')?.content ?? '')
    copyRead = Number.isFinite(at) ? { path: window.location.pathname, at } : null
  }
  return copyRead
}
const never = (): (() => void) => () => {}

/** When the page that is open was copied; null for a page from the server, and after moving on from the copy. */
function useCopyOf(here: string): number | null {
  const copy = useSyncExternalStore(never, copyMark, () => null)
  return copy?.path === here ? copy.at : null
}

import type { Metadata } from 'next'
import { deadEnds } from '@/lib/language/dead-ends'
import { pageFailed } from '@/lib/language/page-failed'
import { say } from '@/lib/language/say'
import { DeadEnd } from './_components/ui/dead-end'
import { LinkButton } from './_components/ui/link-button'
import { readerLocale } from './_server/reader'

export const metadata: Metadata = { title: '404' }

/** Missing and forbidden are the same page in the same words: neither says whether the thing exists. */
export default async function NotHere() {
  const locale = await readerLocale()
  return (
    <DeadEnd
      title={say(deadEnds, locale, 'lostTitle')}
      action={
        <LinkButton kind="primary" href="/">
          {say(pageFailed, locale, 'toStart')}
        </LinkButton>
      }
    >
      <p>{say(deadEnds, locale, 'lostText')}</p>
    </DeadEnd>
  )
}

import type { Metadata } from 'next'
import { cookies, headers } from 'next/headers'
import { deadEnds } from '@/lib/language/dead-ends'
import { say } from '@/lib/language/say'
import { LOCALE_COOKIE, readLocale } from './_components/reader-settings'
import { DeadEnd } from './_components/ui/dead-end'
import { LinkButton } from './_components/ui/link-button'

export const metadata: Metadata = { title: '404' }

/** Missing and forbidden are the same page in the same words: neither says whether the thing exists. */
export default async function NotHere() {
  const [jar, head] = await Promise.all([cookies(), headers()])
  const locale = readLocale(jar.get(LOCALE_COOKIE)?.value, head.get('accept-language'))
  return (
    <DeadEnd
      title={say(deadEnds, locale, 'lostTitle')}
      action={
        <LinkButton kind="primary" href="/">
          {say(deadEnds, locale, 'toStart')}
        </LinkButton>
      }
    >
      <p>{say(deadEnds, locale, 'lostText')}</p>
    </DeadEnd>
  )
}

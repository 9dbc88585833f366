'use client'

import { deadEnds } from '@/lib/language/dead-ends'
import { say } from '@/lib/language/say'
import { Button } from './_components/ui/button'
import { DeadEnd } from './_components/ui/dead-end'
import { LinkButton } from './_components/ui/link-button'
import { usePageLocale } from './_components/ui/use-page-locale'

/** A page that failed: what to do next, and the number that finds it in the log. Never the failure itself. */
export default function PageFailed({ error, retry }: { error: Error & { digest?: string }; retry: () => void }) {
  const locale = usePageLocale()
  return (
    <DeadEnd
      title={say(deadEnds, locale, 'failedTitle')}
      action={
        <>
          <Button kind="primary" onClick={() => retry()}>
            {say(deadEnds, locale, 'tryAgain')}
          </Button>
          <LinkButton href="/">{say(deadEnds, locale, 'toStart')}</LinkButton>
        </>
      }
    >
      <p>{say(deadEnds, locale, 'failedText')}</p>
      {error.digest && <p className="text-base text-ink-2">{say(deadEnds, locale, 'reference', { digest: error.digest })}</p>}
    </DeadEnd>
  )
}

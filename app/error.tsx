'use client'

import { deadEnds } from '@/lib/language/dead-ends'
import { say } from '@/lib/language/say'
import { Button } from './_components/ui/button'
import { buttonLook } from './_components/ui/button-look'
import { DeadEnd } from './_components/ui/dead-end'
import { usePageLocale } from './_components/ui/use-page-locale'

const START = '/'

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
          {/* A whole new page, past whatever failed here; and every screen carries this one, so no more code than it needs. */}
          <a href={START} className={buttonLook('secondary', 'shop', false)}>{say(deadEnds, locale, 'toStart')}</a>
        </>
      }
    >
      <p>{say(deadEnds, locale, 'failedText')}</p>
      {error.digest && <p className="text-base text-ink-2">{say(deadEnds, locale, 'reference', { digest: error.digest })}</p>}
    </DeadEnd>
  )
}

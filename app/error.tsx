'use client'

import { pageFailed } from '@/lib/language/page-failed'
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
      title={say(pageFailed, locale, 'failedTitle')}
      action={
        <>
          <Button kind="primary" onClick={() => retry()}>
            {say(pageFailed, locale, 'tryAgain')}
          </Button>
          {/* A whole new page, past whatever failed here; and every screen carries this one, so no more code than it needs. */}
          <a href={START} className={buttonLook('secondary', 'shop', false)}>{say(pageFailed, locale, 'toStart')}</a>
        </>
      }
    >
      <p>{say(pageFailed, locale, 'failedText')}</p>
      {error.digest && <p className="text-base text-ink-2">{say(pageFailed, locale, 'reference', { digest: error.digest })}</p>}
    </DeadEnd>
  )
}

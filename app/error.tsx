'use client'

import { pageFailed } from '@/lib/language/page-failed'
import { say } from '@/lib/language/say'
import { DeadEnd, NEXT_STEP, OTHER_STEP } from './_components/ui/dead-end'
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
          <button type="button" className={NEXT_STEP} onClick={() => retry()}>
            {say(pageFailed, locale, 'tryAgain')}
          </button>
          {/* A whole new page, past whatever failed here. */}
          <a href={START} className={OTHER_STEP}>{say(pageFailed, locale, 'toStart')}</a>
        </>
      }
    >
      <p>{say(pageFailed, locale, 'failedText')}</p>
      {error.digest && <p className="text-base text-ink-2">{say(pageFailed, locale, 'reference', { digest: error.digest })}</p>}
    </DeadEnd>
  )
}

'use client'

import './global.css'
import { pageFailed } from '@/lib/language/page-failed'
import { LOCALES, say } from '@/lib/language/say'
import { DeadEnd, NEXT_STEP } from './_components/ui/dead-end'

/** The last net, under the root layout itself. It knows nothing about the reader, so it speaks every language it has. */
export default function EverythingFailed({ error, retry }: { error: Error & { digest?: string }; retry: () => void }) {
  return (
    <html lang="en">
      <body className="min-h-dvh bg-paper text-ink">
        <title>Toeline</title>
        <DeadEnd
          title={say(pageFailed, 'en', 'failedTitle')}
          action={
            <button type="button" onClick={() => retry()} className={NEXT_STEP}>
              {LOCALES.map((locale) => say(pageFailed, locale, 'tryAgain')).join(' · ')}
            </button>
          }
        >
          {LOCALES.map((locale) => (
            <p key={locale} lang={locale}>
              {say(pageFailed, locale, 'failedText')}
            </p>
          ))}
          {error.digest && <p className="text-base text-ink-2">{say(pageFailed, 'en', 'reference', { digest: error.digest })}</p>}
        </DeadEnd>
      </body>
    </html>
  )
}

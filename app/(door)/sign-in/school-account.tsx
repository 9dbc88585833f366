'use client'

import { useState } from 'react'
import { door } from '@/lib/language/door'
import { say, type Locale } from '@/lib/language/say'
import { Button } from '@/app/_components/ui/button'
import { Notice } from '@/app/_components/ui/notice'

/** Leads to the school's own sign-in. The address comes by a request of ours: the page's policy lets no form be sent to another site. */
export function SchoolAccount({ locale, name }: { readonly locale: Locale; readonly name: string }) {
  const [failed, setFailed] = useState(false)

  async function go(): Promise<void> {
    try {
      const { csrfToken } = (await (await fetch('/api/auth/csrf')).json()) as { csrfToken: string }
      const response = await fetch('/api/auth/signin/oidc', {
        method: 'POST', headers: { 'Content-Type': 'application/x-www-form-urlencoded' },
        body: new URLSearchParams({ csrfToken, callbackUrl: '/', json: 'true' }),
      })
      const { url } = (await response.json()) as { url?: string }
      if (!response.ok || !url) throw new Error('no address')
      window.location.assign(url)
    } catch {
      setFailed(true)
    }
  }

  return (
    <div className="grid gap-3">
      {failed && <Notice kind="problem" word={say(door, locale, 'notSignedIn')} live>{say(door, locale, 'failed')}</Notice>}
      <div><Button onClick={() => void go()}>{say(door, locale, 'schoolAccount', { name })}</Button></div>
    </div>
  )
}

import 'server-only'
import { cookies, headers } from 'next/headers'
import { LOCALE_COOKIE, readLocale } from '@/lib/language/reader-settings'
import type { Locale } from '@/lib/language/say'
import { currentViewer } from './auth/viewer'

/** The reader's language: their own setting when signed in, else the cookie, else the first language their browser asks for that we have. */
export async function readerLocale(): Promise<Locale> {
  const viewer = await currentViewer()
  if (viewer) return viewer.locale
  const [jar, head] = await Promise.all([cookies(), headers()])
  return readLocale(jar.get(LOCALE_COOKIE)?.value, head.get('accept-language'))
}

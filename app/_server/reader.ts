import 'server-only'
import { cookies, headers } from 'next/headers'
import { LOCALES, type Locale } from '@/lib/language/say'
import { currentViewer } from './auth/viewer'

/** The cookie that keeps a language chosen before signing in. */
export const LOCALE_COOKIE = 'locale'

/** The reader's language: their own setting when signed in, else the cookie, else the first language their browser asks for that we have. */
export async function readerLocale(): Promise<Locale> {
  const viewer = await currentViewer()
  if (viewer) return viewer.locale
  const [jar, head] = await Promise.all([cookies(), headers()])
  const wanted = [jar.get(LOCALE_COOKIE)?.value ?? '', ...(head.get('accept-language') ?? '').split(',').map((part) => part.trim().slice(0, 2).toLowerCase())]
  return wanted.flatMap((code) => LOCALES.filter((locale) => locale === code))[0] ?? 'en'
}

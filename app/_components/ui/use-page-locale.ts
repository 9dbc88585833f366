'use client'

import { useSyncExternalStore } from 'react'
import { LOCALES, type Locale } from '@/lib/language/say'

/** The language the page says it is in, for the few client parts that nobody can pass it to (error pages). */
export function usePageLocale(): Locale {
  return useSyncExternalStore(
    () => () => {},
    () => LOCALES.find((locale) => locale === document.documentElement.lang) ?? 'en',
    () => 'en',
  )
}

import { LOCALES, type Locale } from './say'

/**
 * Two of the reader's settings the first byte of a page needs before anyone has been asked who they are. They are copies, kept in
 * cookies by whoever changes the setting; the person's record is the original.
 */
export const LOCALE_COOKIE = 'locale'
export const THEME_COOKIE = 'theme'

export const THEMES = ['system', 'light', 'dark'] as const
export type Theme = (typeof THEMES)[number]

/** The reader's language: their setting, else the first language their browser asks for that we have, else English. */
export function readLocale(cookie: string | undefined, acceptLanguage: string | null): Locale {
  const wanted = [cookie ?? '', ...(acceptLanguage ?? '').split(',').map((part) => part.trim().slice(0, 2).toLowerCase())]
  return wanted.flatMap((code) => LOCALES.filter((locale) => locale === code))[0] ?? 'en'
}

/** The reader's theme; anything unknown follows the system. */
export function readTheme(cookie: string | undefined): Theme {
  return THEMES.find((theme) => theme === cookie) ?? 'system'
}

import type { Locale } from '../language/say'

const TAGS: Readonly<Record<Locale, string>> = { en: 'en-US', es: 'es-US' }

/** 'Nov 24, 2026', '24 nov 2026': in the reader's language, at the program's place. */
export function dateText(at: Date, locale: Locale, timeZone: string): string {
  return new Intl.DateTimeFormat(TAGS[locale], { timeZone, day: 'numeric', month: 'short', year: 'numeric' }).format(at)
}

/** The same with the time of day. */
export function momentText(at: Date, locale: Locale, timeZone: string): string {
  return new Intl.DateTimeFormat(TAGS[locale], { timeZone, day: 'numeric', month: 'short', hour: 'numeric', minute: '2-digit' }).format(at)
}

/** Date, time of day and time zone, for paper: 'Nov 24, 2026, 3:05 PM CST'. */
export function printedText(at: Date, locale: Locale, timeZone: string): string {
  return new Intl.DateTimeFormat(TAGS[locale], { timeZone, day: 'numeric', month: 'short', year: 'numeric', hour: 'numeric', minute: '2-digit', timeZoneName: 'short' }).format(at)
}

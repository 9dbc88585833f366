import { LOCALES, type Locale } from '../language/say'

/**
 * The languages a sheet for a class is written in: those asked for in its address, else those its people read, else all of them, for a
 * class that nobody has joined yet says nothing of who will.
 *
 * @param asked 'en', 'es' or 'both'; anything else asks for nothing
 */
export function sheetLanguages(asked: string | undefined, readInClass: readonly Locale[]): readonly Locale[] {
  const one = LOCALES.find((locale) => locale === asked)
  if (one) return [one]
  const read = LOCALES.filter((locale) => readInClass.includes(locale))
  return asked === 'both' || read.length === 0 ? LOCALES : read
}

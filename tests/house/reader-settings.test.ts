import { expect, it } from 'vitest'
import { readLocale, readTheme } from '@/lib/language/reader-settings'

it.each([
  ['es', 'en-US,en;q=0.9', 'es'],
  [undefined, 'es-MX,es;q=0.9,en;q=0.8', 'es'],
  [undefined, 'fr-FR,fr;q=0.9,es;q=0.5', 'es'],
  ['xx', 'fr', 'en'],
  [undefined, null, 'en'],
  ['<script>', '*', 'en'],
] as const)('with the cookie %s and a browser asking for %s, speaks %s', (cookie, browser, locale) => {
  expect(readLocale(cookie, browser)).toBe(locale)
})

it('follows the system unless a theme it knows was chosen', () => {
  expect([undefined, 'light', 'dark', 'neon'].map(readTheme)).toEqual(['system', 'light', 'dark', 'system'])
})

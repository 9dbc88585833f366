import { expect, it } from 'vitest'
import { messages, say } from '@/lib/language/say'

const shop = messages({ en: { left: '{n} coupons left for {name}' }, es: { left: 'A {name} le quedan {n} probetas' } })

it('fills the places in the reader’s language', () => {
  expect(say(shop, 'en', 'left', { n: 2, name: 'Ana' })).toBe('2 coupons left for Ana')
  expect(say(shop, 'es', 'left', { n: 2, name: 'Ana' })).toBe('A Ana le quedan 2 probetas')
})

it('refuses to show a half-filled sentence', () => {
  expect(() => say(shop, 'en', 'left', { n: 2 })).toThrow(RangeError)
})

it('does not compile with a key missing in one language', () => {
  // @ts-expect-error 'right' is missing in Spanish
  messages({ en: { left: 'a', right: 'b' }, es: { left: 'a' } })
})

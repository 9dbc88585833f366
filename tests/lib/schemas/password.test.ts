// Length counts, not composition (NIST SP 800-63B-4 section 3.1.1.2): any characters, no rules about kinds, nothing a guesser tries first.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { passwordProblem } from '@/lib/schemas/password'

const SHORT = 'Use at least 15 characters. Four words in a row are easy to remember and hard to guess.'
const COMMON = 'This one is on the lists that guessers try first. Choose words that have nothing to do with each other.'
const REPEATS = 'This repeats or counts. Choose words that have nothing to do with each other.'
const ABOUT = 'Leave your name, the school and the program out of it.'
const ABOUT_ROSA = ['Rosa', 'Quintero', 'r.quintero', 'toeline', 'Harbour Trades Centre']
const problem = (password: string, about: readonly string[] = ABOUT_ROSA) => passwordProblem(password, about, 'en')

describe('a good password', () => {
  it.each([
    'seven quiet herons wading', 'copper-lathe-winch-tongs', 'no capitals no digits', 'ñandú cerca del árbol', '溶接の練習は毎日夕方にします。', '🔥 spark and slag and smoke 🔥',
    'correct horse battery stapler', 'Tr0ub4dor&3-then-some', 'my sister welds better',
  ])('is %s', (password) => {
    expect(problem(password)).toBeNull()
  })

  it('may hold a name beside enough else', () => {
    expect(problem('rosa paints seven quiet herons')).toBeNull()
  })

  it('may hold a short word that happens to be in a name', () => {
    expect(problem('at an inn by the sea at six', ['An', 'Li', 'a.l'])).toBeNull()
  })
})

describe('length', () => {
  it('is 15 to 200 characters, whatever they are', () => {
    const of = (length: number): string => Array.from('quietheronswadingbyfourteensilverlakes'.repeat(6)).slice(0, length).join('')
    expect(problem(of(14))).toBe(SHORT)
    expect(problem(of(15))).toBeNull()
    expect(problem(of(200))).toBeNull()
    expect(problem(of(201))).toBe('Keep it under 200 characters.')
  })

  it('counts characters as people do, not as computers store them', () => {
    expect(problem('🔥🌊🐟🦆🌿🪵🔩'), 'seven pictures are seven').toBe(SHORT)
    expect(problem('cafe\u0301cafe\u0301 olé o'), 'an accent is part of its letter').toBe(SHORT)
  })
})

describe('what guessers try first', () => {
  it.each(['correct horse battery staple', 'Correct-Horse-Battery-Staple', 'PASSWORD PASSWORD', 'Iloveyou-iloveyou', 'qwertyuiopasdfgh', 'ｐａｓｓｗｏｒｄｐａｓｓｗｏｒｄ', 'administrator-123'])(
    'is refused however it is written: %s', (password) => {
      expect(problem(password)).toBe(COMMON)
    })

  it.each(['aaaaaaaaaaaaaaa', 'weldweldweldweld', 'abababababababab', '-- -- -- -- -- --', '               ', '_______________', '!!!!!!!!!!!!!!!a', 'abcdefghijklmnopqr', 'zyxwvutsrqponmlkj', '3456789012345678', '11112222333344445'])(
    'is refused when it repeats or counts: %o', (password) => {
      expect(problem(password)).toBe(REPEATS)
    })

  it.each(['rosaquintero2026', 'Rosa.Quintero.99!', 'r.quintero-r.quintero', 'harbourtradescentre1', 'Toeline-toeline-1', 'QUINTERO quintero'])('is refused when it is about its owner: %s', (password) => {
    expect(problem(password)).toBe(ABOUT)
  })
})

it('is explained in Spanish to those who read Spanish', () => {
  expect(passwordProblem('corta', [], 'es')).toBe('Usa al menos 15 caracteres. Cuatro palabras seguidas son fáciles de recordar y difíciles de adivinar.')
})

it('never fails on any text, and never takes less than 15 characters', () => {
  fc.assert(fc.property(fc.string({ unit: 'binary', maxLength: 220 }), fc.array(fc.string({ maxLength: 10 }), { maxLength: 3 }), (password, about) => {
    const said = passwordProblem(password, about, 'en')
    return said === null ? [...password.normalize('NFKC')].length >= 15 : said.length > 0
  }))
})

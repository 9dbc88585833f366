import type { Locale } from '../language/say'
import { problems } from '../language/problems'
import { say } from '../language/say'

/** NIST SP 800-63B-4 section 3.1.1.2: 15 characters when the password is the only factor; no composition rules. */
const LEAST = 15
const MOST = 200

/** Long passwords that guessers' lists start with; shorter ones the length already keeps out. From memory. */
const COMMON = [
  '123456789012345', '1234567890123456', 'passwordpassword', 'password12345678', 'qwertyuiopasdfgh', 'qwertyuiop123456',
  'iloveyouiloveyou', 'correcthorsebatterystaple', 'correct horse battery staple', 'letmeinletmeinletmein', 'thequickbrownfox',
  'administrator123', 'welcomewelcome123', 'changemechangeme', 'abcdefghijklmnop', 'iloveyou123456789', 'trustno1trustno1',
]

const plain = (text: string): string => text.normalize('NFKC').toLowerCase().replace(/[^\p{L}\p{N}]/gu, '')

/** Whether a text is one short piece over and over, or simply counts along the keyboard or the alphabet. */
function repeatsOrCounts(text: string): boolean {
  if (/^(.{1,4})\1+.{0,3}$/u.test(text)) return true
  const codes = [...text].map((character) => character.codePointAt(0) ?? 0)
  const steps = codes.slice(1).map((code, index) => code - (codes[index] ?? 0))
  return steps.filter((step) => step === 1 || step === -1 || step === 0).length > steps.length * 0.8
}

/**
 * What is wrong with a new password, in a sentence, or null when it will do.
 *
 * @param about names a guesser would try: the person's, the school's
 */
export function passwordProblem(password: string, about: readonly string[], locale: Locale): string | null {
  const text = password.normalize('NFKC')
  const characters = [...text].length
  if (characters < LEAST) return say(problems, locale, 'passwordShort')
  if (characters > MOST) return say(problems, locale, 'passwordLong', { most: MOST })
  const bare = plain(text)
  if (COMMON.some((common) => plain(common) === bare)) return say(problems, locale, 'passwordCommon')
  // As written too: of a password of nothing but spaces or dashes no letter is left to look at.
  if (repeatsOrCounts(bare) || repeatsOrCounts(text)) return say(problems, locale, 'passwordRepeats')
  const rest = about.map(plain).filter((word) => word.length >= 3).reduce((left, word) => left.replaceAll(word, ''), bare)
  if (rest.length < bare.length && [...rest].length < LEAST - 5) return say(problems, locale, 'passwordAboutYou')
  return null
}

import { myProgress } from '../language/my-progress'
import { say, type Locale } from '../language/say'
import type { Goal } from './goals'
import { chanceText } from './readiness-track'

/** 'two', 'dos': numbers people say in words; figures from seven on. Feminine in Spanish, for it counts coupons. */
function countWord(count: number, locale: Locale): string {
  const words = { 1: 'n1', 2: 'n2', 3: 'n3', 4: 'n4', 5: 'n5', 6: 'n6' } as const
  const key = count in words ? words[count as keyof typeof words] : null
  return key ? say(myProgress, locale, key) : String(count)
}

/** A rule's name stands alone with a capital; inside a sentence it has none. */
const inSentence = (name: string): string => name.charAt(0).toLocaleLowerCase() + name.slice(1)

const capital = (text: string): string => text.charAt(0).toLocaleUpperCase() + text.slice(1)

/** A goal as a sentence or two, spoken to the student. `nameOfRule` puts a rule's id into the reader's words. */
export function explainGoal(goal: Goal, nameOfRule: (rule: string) => string, locale: Locale): string {
  const told = (key: keyof typeof myProgress.en, values: Record<string, string | number> = {}): string => say(myProgress, locale, key, values)
  switch (goal.code) {
    case 'first-coupon':
    case 'weld-again':
    case 'talk-about-test':
    case 'keep-it-alive':
    case 'mend-blocking':
    case 'after-failed-test':
      return told(`goal-${goal.code}`)
    case 'look-waiting':
    case 'more-for-estimate':
      return goal.count === 1 ? told(`goal-${goal.code}-1`) : capital(told(`goal-${goal.code}`, { count: countWord(goal.count, locale) }))
    case 'inside-band': {
      const chance = told('goal-inside-band-why', { chance: chanceText(goal.probability) })
      return `${goal.count === 1 ? told('goal-inside-band-1') : capital(told('goal-inside-band', { count: countWord(goal.count, locale) }))} ${chance}`
    }
    case 'not-within': return told('goal-not-within', { count: countWord(goal.count, locale), chance: chanceText(goal.probability) })
    case 'mend-rule': return told('goal-mend-rule', { rule: inSentence(nameOfRule(goal.rule)), chance: chanceText(goal.probability) })
  }
}

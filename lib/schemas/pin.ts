import * as z from 'zod'
import { classLife } from '../language/class-life'
import { say, type Locale } from '../language/say'
import type { Reader } from './field'
import { LEAST_PIN, MOST_PIN } from './pin-length'

/** Whether every step from digit to digit is the same: 0000, 1234, 9876, 2468. */
function steady(pin: string): boolean {
  const steps = new Set([...pin].slice(1).map((digit, index) => Number(digit) - Number(pin[index])))
  return steps.size === 1
}

/** Whether it is one short piece over and over: 1212, 123123. */
const repeats = (pin: string): boolean => /^(\d{1,3})\1+$/.test(pin)

/** What is wrong with a new PIN, in a sentence, or null when it will do. Refusing the ones everybody tries first is common practice, no source. */
export function pinProblem(pin: string, locale: Locale): string | null {
  if (!new RegExp(`^[0-9]{${LEAST_PIN},${MOST_PIN}}$`).test(pin)) return say(classLife, locale, 'pinDigits')
  if (steady(pin) || repeats(pin)) return say(classLife, locale, 'pinWeak')
  return null
}

/** A person's own new PIN; `current` is their password, verified by the server. */
export const newPinSchema = (reader: Reader) =>
  z.strictObject({
    current: z.string(),
    pin: z.string().transform((text) => text.trim()).superRefine((pin, context) => {
      const problem = pinProblem(pin, reader.locale)
      if (problem) context.addIssue({ code: 'custom', message: problem })
    }),
  })

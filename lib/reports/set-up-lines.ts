import type { Consumable } from '../consumables/consumable'
import { checkSetUpAnswers, type SetUpAnswerCheck } from '../consumables/check-set-up-answers'
import type { SetUpAnswers } from '../consumables/set-up-answers'
import { BOOTH_CARD, checkBoothCard, checkPass, type SetupCheck, type SetupFacts } from '../consumables/setup-checks'
import { scorecardWords } from '../language/scorecard'
import { say, type Locale } from '../language/say'
import { setUpWhy } from '../language/set-up-why'
import type { BoothCard, PassSettings } from '../procedure/booth-card'
import type { Source } from '../source'
import { formatForReader } from '../units/display'
import type { LengthUnit } from '../units/length'
import { citation } from './citation'
import { explainSetup } from './explain-setup'

type Reader = { readonly locale: Locale; readonly units: LengthUnit }

/** What a set-up is checked against: everything here survives the way from the server to the device. */
export type SetUpBasis = { readonly consumable: Consumable; readonly facts: SetupFacts; readonly card: BoothCard }

/** One mismatch as the student reads it before the arc. */
export type SetUpLine = {
  readonly severity: 'wrong' | 'caution'
  readonly text: string
  /** What it does to the weld: shop knowledge, no source. null where the sentence says it all. */
  readonly why: string | null
  /** Who says so, and how sure that is. */
  readonly source: string
}

/** The set-up check of a log screen, and what its lists offer. */
export type SetUpView = {
  readonly basis: SetUpBasis
  /** What the settings filled in differ in, worked out with the page. */
  readonly lines: readonly SetUpLine[]
  /** Wire or rod sizes as the reader reads them, by their millimetres. */
  readonly sizes: readonly { readonly value: string; readonly label: string }[]
  readonly positions: readonly string[]
}

/**
 * Everything about a set-up that differs from the wire's class, the booth card or the exercise, wrong before caution. Empty when
 * nothing that was answered differs; settings left empty are not checked, and nothing here keeps anyone from welding.
 */
export function setUpLines({ consumable, facts, card }: SetUpBasis, pass: PassSettings, answers: SetUpAnswers, reader: Reader): SetUpLine[] {
  const stickOut = pass.contactTipToWorkMm
  const asSet: BoothCard = {
    ...card, polarity: pass.polarity ?? card.polarity, gas: pass.gas ?? card.gas,
    contactTipToWorkMm: stickOut === null ? card.contactTipToWorkMm : { min: stickOut, max: stickOut },
  }
  const byClass = checkBoothCard(consumable, facts, asSet)
  // Travel speed is known only after the arc.
  const byCard = checkPass(consumable, card, { ...pass, arcSeconds: null }).filter(({ check }) => !byClass.some((each) => each.check === check))
  const checks = [...byClass, ...byCard]
  return [
    ...checks.filter(({ severity }) => severity === 'wrong').map((check) => lineOf(check, reader)),
    ...checkSetUpAnswers(answers, facts).map((check) => answerLine(check, reader)),
    ...checks.filter(({ severity }) => severity === 'caution').map((check) => lineOf(check, reader)),
  ]
}

function lineOf(check: SetupCheck, { locale, units }: Reader): SetUpLine {
  const why = WHY[check.check]
  return {
    severity: check.severity, text: BEFORE[check.check] ? say(setUpWhy, locale, BEFORE[check.check] ?? 'polarityOffCard', namesOf(check)) : explainSetup(check, locale, units),
    why: why ? say(setUpWhy, locale, why) : null, source: sourceText(check.source, locale),
  }
}

function answerLine({ check, values, source }: SetUpAnswerCheck, { locale, units }: Reader): SetUpLine {
  const length = (value: string | number | undefined): string => (typeof value === 'number' ? formatForReader(value, units) : String(value))
  const filled = { set: length(values['setMm'] ?? values['set'] ?? ''), right: length(values['rightMm'] ?? values['right'] ?? '') }
  return { severity: 'caution', text: say(setUpWhy, locale, check, filled), why: say(setUpWhy, locale, `${check}-why`), source: sourceText(source, locale) }
}

function sourceText({ title, clause, status }: Source, locale: Reader['locale']): string {
  const named = title === BOOTH_CARD.title ? say(setUpWhy, locale, 'cardSource') : title
  const cited = citation({ title: named, clause }, locale)
  return `${cited} · ${say(scorecardWords, locale, status)}`
}

/** Checks whose usual sentence speaks of a pass already run. */
const BEFORE: Partial<Record<SetupCheck['check'], 'polarityOffCard' | 'gasOffCard'>> = { 'polarity-off-card': 'polarityOffCard', 'gas-off-card': 'gasOffCard' }
const namesOf = ({ values }: SetupCheck): Record<string, string | number> => ({ set: values['ran'] ?? '', card: values['card'] ?? '' })

const WHY: Partial<Record<SetupCheck['check'], 'why-polarity' | 'why-gas' | 'why-no-gas' | 'why-stick-out' | 'why-volts' | 'why-feed' | 'why-position' | 'why-plate'>> = {
  polarity: 'why-polarity', 'polarity-off-card': 'why-polarity', 'gas-missing': 'why-gas', 'gas-of-another-class': 'why-gas', 'gas-off-card': 'why-gas',
  'gas-on-self-shielded': 'why-no-gas', 'stick-out': 'why-stick-out', 'contact-tip-off-card': 'why-stick-out', 'volts-off-card': 'why-volts',
  'wire-feed-off-card': 'why-feed', 'amps-off-card': 'why-feed', position: 'why-position', progression: 'why-position', 'plate-too-thick': 'why-plate',
}

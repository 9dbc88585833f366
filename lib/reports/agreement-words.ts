import { GAUGE_UNITS, gaugeResolutionMm } from '../units/gauge-steps'
import type { LengthUnit } from '../units/length'
import { fixed } from '../units/quantity'
import type { RuleFigures } from './agreement'
import { LEAST_TO_CORRECT, type AgreementFigures, type Corrected } from './agreement-figures'
import type { Leaning, Leanings } from './agreement-leanings'
import { WHOLE_COUPON } from './agreement-looks'
import type { WidthBias } from './agreement-widths'
import { biasText, spreadText } from './gauge-study-words'
import { LEAST_TO_COMPARE } from './pass-rates'
import { countText, shareText } from './share-text'

/** Whom the sentences are about. */
export type Teller = {
  readonly nameOf: (readerId: string) => string
  /** The reader spoken to; null where all are named. */
  readonly you: string | null
  readonly units: LengthUnit
}

/** '38 of 41' */
export const alikeText = ({ alike, compared }: AgreementFigures): string => `${countText(alike, 'en')} of ${countText(compared, 'en')}`

/** '93 % (81 % to 97 %)'; null where there are too few. */
export const shareWithInterval = ({ share }: AgreementFigures): string | null => share && `${shareText(share.rate)} (${shareText(share.low)} to ${shareText(share.high)})`

/** A coefficient with its interval, or why there is none: '0.91 (0.82 to 1.00)'. */
export function correctedText(figure: Corrected): string {
  switch (figure.kind) {
    case 'few': return `from ${LEAST_TO_CORRECT} coupons on`
    case 'all-the-same': return 'not defined, every verdict was the same'
    case 'estimate': return figure.interval ? `${two(figure.value)} (${two(figure.interval.low)} to ${two(figure.interval.high)})` : `${two(figure.value)}, without an interval`
  }
}

const two = (value: number): string => fixed(value, 2).replace('-', '−')

/** The rule's name inside a sentence. */
export const inSentence = (name: string): string => (/^[A-Z][a-z]/.test(name) ? name.charAt(0).toLowerCase() + name.slice(1) : name)

type Answered = { readonly coupons: number; readonly verdicts: AgreementFigures; readonly rules: readonly RuleFigures[] }

/** The answer first: on how many coupons the verdicts were the same, then over what they part most. `who` begins the sentence ('Two readers'), `they` the last one. */
export function agreementAnswer({ coupons, verdicts, rules }: Answered, who: string, they: 'they' | 'you' = 'they'): string[] {
  const share = shareWithInterval(verdicts)
  const answer = share
    ? `${who} reached the same verdict on ${alikeText(verdicts)} coupons: ${share}.`
    : `${who} reached the same verdict on ${alikeText(verdicts)} coupons: too few to say more.`
  return [answer, ...leftOutWords(coupons, verdicts), ...partMost(rules, they)]
}

function leftOutWords(coupons: number, { leftOut }: AgreementFigures): string[] {
  if (leftOut === 0) return []
  return [`Of ${countText(coupons, 'en')} coupons that both looked at, ${countText(leftOut, 'en')} ${leftOut === 1 ? 'is' : 'are'} left out of this, because somebody left something unmeasured.`]
}

function partMost(rules: readonly RuleFigures[], they: string): string[] {
  const told = rules.filter(({ figures }) => figures.share !== null)
  const [least] = told
  if (!least?.figures.share) return []
  if (least.figures.share.rate === 1) return [`Over no rule did ${they} part.`]
  return [`${capital(they)} part most over ${inSentence(least.rule)}: alike on ${alikeText(least.figures)}, ${shareWithInterval(least.figures) ?? ''}.`]
}

const COUNTS = ['', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine']

/** 'You accept undercut that two others reject: 10 of the 11 coupons on which you parted over it, of 60 compared.' */
export function leaningText({ readerId, subject, way, otherIds, thisWay, parted, compared }: Leaning, { nameOf, you }: Teller): string {
  const spoken = readerId === you
  const others = otherIds.length === 1 ? nameOf(otherIds[0] ?? '') : `${COUNTS[otherIds.length] ?? String(otherIds.length)} others`
  const verb = (what: 'accept' | 'reject', one: boolean): string => (one ? `${what}s` : what)
  const [own, opposite] = way === 'accepts' ? (['accept', 'reject'] as const) : (['reject', 'accept'] as const)
  const what = subject === WHOLE_COUPON ? 'coupons' : inSentence(subject)
  return `${spoken ? 'You' : capital(nameOf(readerId))} ${verb(own, !spoken)} ${what} that ${others} ${verb(opposite, otherIds.length === 1)}: ${thisWay.length} of the ${parted} coupons on which ${spoken ? 'you' : 'they'} parted${subject === WHOLE_COUPON ? '' : ' over it'}, of ${countText(compared, 'en')} compared.`
}

const capital = (name: string): string => name.charAt(0).toUpperCase() + name.slice(1)

/** How many such lines chance would show. */
export function leaningCaution({ looked, byChance }: Leanings): string {
  const chance = byChance < 0.05 ? 'would hardly show such a line' : `would show about ${fixed(byChance, 1)} such lines`
  return `${looked} ${looked === 1 ? 'pairing of a reader and a rule was' : 'pairings of a reader and a rule were'} looked at. If nobody leaned, chance alone ${chance}.`
}

/** What the lines are good for. */
export const LEANING_USE = 'A line here is a reason to put those coupons on the table together. It does not say who saw right, and it is no finding about anyone.'

/** A mean difference that nobody could see on a gauge, however surely it is there. */
const SLIGHT_MM = Math.min(...GAUGE_UNITS.map(gaugeResolutionMm)) / 2

/** Who reads wider, where that can be told, and how far apart two single widths must be expected. `of`: 'the others', or a name. */
export function widthWords({ coupons, found }: WidthBias, who: string, of: string, units: LengthUnit): string[] {
  if (!found) return [`Widths cannot be compared yet: both measured them on ${coupons} of the ${LEAST_TO_COMPARE} coupons it takes.`]
  const { bias } = found
  const size = (value: number): string => spreadText(Math.abs(value), units)
  const reads = who === 'You' ? 'read' : 'reads'
  const first = bias.low > 0 || bias.high < 0
    ? `${who} ${reads} widths ${size(bias.mean)} ${bias.mean > 0 ? 'wider' : 'narrower'} than ${of} on average (${size(bias.mean > 0 ? bias.low : bias.high)} to ${size(bias.mean > 0 ? bias.high : bias.low)}), on ${countText(coupons, 'en')} coupons${Math.abs(bias.mean) < SLIGHT_MM ? ', less than half a step of the finest gauge: nothing to mend' : ''}.`
    : `${who} ${reads} widths neither wider nor narrower than ${of}, as far as ${countText(coupons, 'en')} coupons can tell: ${biasText(bias, units)} on average.`
  return [first, `A single width is off the other’s by ${signed(found.limits.low, units)} to ${signed(found.limits.high, units)}, 19 times in 20.`]
}

/** '+0.020 in', '−0.31 mm' */
export function signed(valueMm: number, units: LengthUnit): string {
  const text = spreadText(Math.abs(valueMm), units)
  return /[1-9]/.test(text) ? `${valueMm < 0 ? '−' : '+'}${text}` : text
}

/** What stands beside a rule: who accepted alone, and what could not be compared. `names` of the two sides; null where they change. */
export function apartText({ onlyFirst, onlySecond, leftOut, compared }: AgreementFigures, names: readonly [string, string] | null): string {
  const alone = (coupons: readonly string[], name: string): string[] => (coupons.length === 0 ? [] : [`${coupons.length} accepted only by ${name}`])
  return [
    ...(names ? [...alone(onlyFirst, names[0]), ...alone(onlySecond, names[1])] : []),
    ...(leftOut > 0 ? [`${leftOut} left out`] : []),
    ...(compared > 0 && compared < LEAST_TO_COMPARE ? ['too few to compare'] : []),
  ].join(', ')
}

/** Rules over which nobody parted, in one sentence with their coupons; null without any. */
export function neverPartedText(rules: readonly RuleFigures[]): string | null {
  const never = rules.filter(({ figures }) => figures.compared > 0 && figures.alike === figures.compared)
  if (never.length === 0) return null
  return `Alike on every coupon: ${never.map(({ rule, figures }) => `${inSentence(rule)} (${countText(figures.compared, 'en')})`).join(', ')}.`
}

/** Rules over which somebody parted: those worth a row. */
export const partedRules = (rules: readonly RuleFigures[]): RuleFigures[] => rules.filter(({ figures }) => figures.alike < figures.compared)

/** The same, of students against their instructors. */
export const STUDENTS_USE = 'A line here is worth ten minutes with those coupons in hand, for everybody. It is about the students together, not about one of them.'

/** How the figures are to be read, with their sources. */
export const AGREEMENT_NOTES = [
  `Only coupons that both accepted or rejected are compared; the verdict is the one computed from what each of them measured and saw, also where an instructor decided otherwise. Fewer than ${LEAST_TO_COMPARE} give a count only, fewer than ${LEAST_TO_CORRECT} no AC1 and no kappa.`,
  'AC1 and kappa take away what chance alone would give: 1 is full agreement, 0 is chance. Where nearly every coupon passes, kappa falls although people agree, so read AC1 first. Sources: Gwet 2008; Cohen 1960; Scott 1955; the interval of the percentage is Wilson’s. All intervals are 95 %.',
  'They take coupons as independent. Coupons of one student resemble each other, so the true spread is somewhat wider.',
] as const

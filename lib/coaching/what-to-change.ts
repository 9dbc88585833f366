import type { CriteriaSet } from '../criteria/types'
import type { BoothCard, PassSettings } from '../procedure/booth-card'
import type { Process } from '../procedure/process'
import type { Inspection, Scorecard, Weld } from '../scoring/types'
import type { Source } from '../source'
import { CAUSES, type Cause, type Hint, type Remedy } from './causes'
import { COACHING_SOURCE, usualCauses } from './common-practice'
import type { Evidence, Setting } from './evidence'
import { concerns, type Concern } from './priority'
import { placeEvidence, readingsEvidence } from './readings-evidence'
import { settingsAgainstCard, type SettingsAgainstCard, type SettingState } from './settings-evidence'
import type { Symptom } from './symptom'

export type CoachingInput = {
  readonly weld: Weld
  readonly inspection: Inspection
  readonly scorecard: Scorecard
  readonly passes: readonly PassSettings[]
  readonly boothCard: BoothCard | null
  /** Scorecards of earlier coupons of the exercise, oldest first. */
  readonly history?: readonly Scorecard[]
  /** The set that judged the coupon; needed to understand the rules of a program's own set. */
  readonly criteria?: CriteriaSet
}

/** One thing to try on the next coupon. Common practice, never a certainty. */
export type Advice = {
  readonly rule: string
  readonly symptom: Symptom
  /** 'mend': the rule rejected. 'hold': nothing rejected, and this came closest to its limit. */
  readonly aim: 'mend' | 'hold'
  readonly cause: Cause
  readonly remedy: Remedy
  readonly evidence: readonly Evidence[]
  /**
   * 'likely' when a setting off the booth card points to the cause, or, for a rule's first cause, when the readings do and no
   * setting speaks against it. Everything else is 'possible'.
   */
  readonly likelihood: 'likely' | 'possible'
  /** Other rejected rules that the same cause would explain. */
  readonly alsoExplains: readonly string[]
  readonly source: Source
}

export const CAUSES_PER_RULE = 3

/** What makes one cause more worth telling than another. The numbers are our choice. */
export const POINTS = {
  /** The setting lies off the booth card on the cause's side; `perTenth` more for each tenth of the range's end, up to `atMostFar`. */
  offCard: 10,
  perTenth: 1,
  atMostFar: 5,
  /** Another polarity or gas than the card's. */
  differs: 10,
  /** For each reading that points to it. */
  reading: 3,
  /** It would explain another rejected rule as well. */
  explainsMore: 2,
  /** Its setting was on the card. */
  onCard: -2,
} as const

/** Evidence that only says the symptom over again, and so points to nothing. */
const RESTATES: Readonly<Partial<Record<Symptom, readonly Hint[]>>> = {
  'bead-too-narrow': ['bead-narrow'],
  'bead-too-wide': ['bead-wide'],
  'width-uneven': ['widths-vary'],
  'legs-unequal': ['legs-differ'],
  slag: ['slag-seen'],
  spatter: ['spatter-seen'],
  'poor-restart': ['at-restart'],
}

/**
 * What to change on the next coupon, the thing that matters most first: rules in the order of `concerns`, and for each up to three
 * causes. A coupon without a rejection gets the rule that came closest to its limit.
 *
 * Causes are ordered by the points of `POINTS`, to which a cause adds 1 to 3 for how common it is.
 *
 * Not offered: a cause whose setting lies off the card on the other side; one that a reading contradicts; one whose setting was on
 * the card and that no reading points to, as long as another is left; and, for a rule that a likely cause told before would
 * explain, everything that no setting points to.
 *
 * @returns an empty list when nothing was rejected and no reading used any of its limit
 * @throws RangeError for a setting that is not a number over 0
 */
export function whatToChange(input: CoachingInput): Advice[] {
  const { weld, inspection, scorecard, passes, boothCard, history = [], criteria } = input
  const all = concerns({ weld, inspection, scorecard, history, rules: criteria?.rules ?? [] })
  const kept = all[0]?.aim === 'hold' ? all.slice(0, 1) : all
  const settings = settingsAgainstCard(passes, boothCard)
  const readings = readingsEvidence(weld, inspection, scorecard)

  const told = new Set<Cause>()
  const explained = new Set<string>()
  return kept.flatMap(concern => {
    const evidence = [...readings, ...placeEvidence(concern.finding, weld, inspection)].filter(one => !restates(concern.symptom, one))
    const others = kept.filter(other => other !== concern)
    const weighed = usualCauses(concern.symptom, weld)
      .filter(({ cause }) => !told.has(cause))
      .flatMap(({ cause, common }) => weigh(cause, common, settings, evidence, others, weld))
      .filter(one => one.bySettings || !explained.has(concern.finding.rule))
      .sort((a, b) => b.score - a.score)
    const advice = worthTelling(weighed).slice(0, CAUSES_PER_RULE).map((one, index) => adviceOf(concern, one, index === 0))
    for (const one of advice) {
      told.add(one.cause)
      if (one.likelihood === 'likely') one.alsoExplains.forEach(rule => explained.add(rule))
    }
    return advice
  })
}

/** Without the causes that nothing points to and whose setting was on the card, unless there are only such. */
function worthTelling(weighed: readonly Weighed[]): readonly Weighed[] {
  const open = weighed.filter(one => !one.onCard || one.evidence.length > 0)
  return open.length > 0 ? open : weighed
}

type Weighed = {
  readonly cause: Cause; readonly score: number; readonly evidence: readonly Evidence[]
  readonly onCard: boolean; readonly bySettings: boolean; readonly byReadings: boolean; readonly alsoExplains: readonly string[]
}

function weigh(cause: Cause, common: number, settings: SettingsAgainstCard, readings: readonly Evidence[], others: readonly Concern[], weld: Weld): Weighed[] {
  const facts = CAUSES[cause]
  const state = facts.setting === undefined ? null : stateFor(facts.setting.of, settings, weld.process)
  const off = state?.kind === 'off-card' ? state : null
  if (off !== null && off.side !== facts.setting?.side) return []
  if (facts.differs === 'polarity' && settings.polarityIsRight) return []
  const differs = facts.differs === undefined ? null : settings[facts.differs]
  const shown = (hints: readonly Hint[] | undefined, one: Evidence): boolean => hints?.some(hint => shows(one, hint)) ?? false
  if (off === null && readings.some(one => shown(facts.against, one))) return []
  const pointing = readings.filter(one => shown(facts.hints, one))
  const alsoExplains = others.filter(other => usualCauses(other.symptom, weld).some(usual => usual.cause === cause)).map(other => other.finding.rule)
  const onCard = state?.kind === 'on-card'

  const score = common + POINTS.reading * pointing.length
    + (off === null ? 0 : POINTS.offCard + Math.min(POINTS.atMostFar, POINTS.perTenth * off.share * 10))
    + (differs === null ? 0 : POINTS.differs)
    + (alsoExplains.length === 0 ? 0 : POINTS.explainsMore)
    + (onCard ? POINTS.onCard : 0)
  const evidence = [...(off === null ? [] : [off.evidence]), ...(differs === null ? [] : [differs]), ...pointing]
  return [{ cause, score, evidence, onCard, bySettings: off !== null || differs !== null, byReadings: pointing.length > 0 && !onCard, alsoExplains }]
}

function stateFor(setting: Setting | 'current', { states }: SettingsAgainstCard, process: Process): SettingState {
  if (setting !== 'current') return states[setting]
  return process !== 'SMAW' && states['wire-feed'].kind !== 'unknown' ? states['wire-feed'] : states.amps
}

/** Evidence that names a side stands for the code of that side as well. */
function shows(evidence: Evidence, hint: Hint): boolean {
  if (evidence.code === 'legs-differ') return hint === 'legs-differ' || hint === `${evidence.longer}-leg-longer`
  if (evidence.code === 'undercut-one-toe') return hint === 'undercut-one-toe' || hint === `undercut-${evidence.toe}-toe`
  return evidence.code === hint
}

/** Unequal legs say no more than the symptom does, unless one lies above the other: then the side tells where the arc was aimed. */
function restates(symptom: Symptom, evidence: Evidence): boolean {
  const sided = evidence.code === 'legs-differ' && (evidence.longer === 'upper' || evidence.longer === 'lower')
  return !sided && (RESTATES[symptom]?.some(hint => hint === evidence.code) ?? false)
}

function adviceOf(concern: Concern, { cause, evidence, bySettings, byReadings, alsoExplains }: Weighed, first: boolean): Advice {
  const { times, of } = concern.seenBefore
  const repeated: readonly Evidence[] = first && times > 0 ? [{ code: 'seen-before', times, of }] : []
  return {
    rule: concern.finding.rule,
    symptom: concern.symptom,
    aim: concern.aim,
    cause,
    remedy: CAUSES[cause].remedy,
    evidence: [...evidence, ...repeated],
    likelihood: bySettings || (first && byReadings) ? 'likely' : 'possible',
    alsoExplains,
    source: COACHING_SOURCE,
  }
}

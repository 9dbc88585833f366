import { signTest, signTestSize } from '../statistics/sign-test'
import { compareLooks, type AgreementFigures } from './agreement-figures'
import { asSeenBy, ruleNamesOf, WHOLE_COUPON, type Subject, type TwoLooks } from './agreement-looks'

/** A split as uneven as this by chance alone in one of twenty cases at most is told. This project's choice, the usual one. */
export const LEANING_LEVEL = 0.05

/** Somebody who parts from others one way. */
export type Leaning = {
  readonly readerId: string
  readonly subject: Subject
  /** What this reader does where the others do the opposite. */
  readonly way: 'accepts' | 'rejects'
  /** Those who said the opposite. */
  readonly otherIds: readonly string[]
  /** Coupons parted upon this way, of all parted upon, of all compared. */
  readonly thisWay: readonly string[]
  readonly parted: number
  readonly compared: number
  readonly p: number
}

export type Leanings = {
  /** The least likely to be chance first. */
  readonly found: readonly Leaning[]
  /** How many readers and rules were looked at on which there was something to split. */
  readonly looked: number
  /** How many leanings chance alone would show if nobody leaned. */
  readonly byChance: number
}

/**
 * Who parts from the others one way, rule by rule and over the whole coupon: an exact sign test of the coupons parted upon. So many looks
 * raise false alarms, therefore it is told how many. Two who part only from each other are told once, as the one who accepts.
 *
 * @param readerIds whose leanings
 */
export function leaningsOf(readerIds: readonly string[], looks: readonly TwoLooks[]): Leanings {
  const subjects: Subject[] = [WHOLE_COUPON, ...ruleNamesOf(looks)]
  const seen = new Map<string, Leaning>()
  for (const readerId of readerIds) {
    const own = asSeenBy(readerId, looks)
    for (const subject of subjects) {
      const figures = compareLooks(own, subject, 'kept')
      const leaning = leaningIn(readerId, subject, own, figures)
      if (leaning.parted === 0) continue
      const key = JSON.stringify([subject, [...figures.onlyFirst, ...figures.onlySecond].sort()])
      if (!seen.has(key) || leaning.way === 'accepts') seen.set(key, leaning)
    }
  }
  const all = [...seen.values()]
  return {
    found: all.filter(({ p }) => p <= LEANING_LEVEL).sort((a, b) => a.p - b.p || b.parted - a.parted),
    looked: all.length,
    byChance: all.reduce((sum, { parted }) => sum + signTestSize(parted, LEANING_LEVEL), 0),
  }
}

function leaningIn(readerId: string, subject: Subject, own: readonly TwoLooks[], { onlyFirst, onlySecond, compared }: AgreementFigures): Leaning {
  const thisWay = onlyFirst.length >= onlySecond.length ? onlyFirst : onlySecond
  const otherIds = [...new Set(own.filter(({ couponId }) => thisWay.includes(couponId)).map(({ second }) => second.readerId))]
  return {
    readerId, subject, way: thisWay === onlyFirst ? 'accepts' : 'rejects', otherIds, thisWay,
    parted: onlyFirst.length + onlySecond.length, compared, p: signTest(onlyFirst.length, onlySecond.length),
  }
}

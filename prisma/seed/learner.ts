import type { Dice } from './dice'

/** What a hand can be better or worse at, each apart from the others. */
export const FACETS = ['size', 'evenness', 'balance', 'profile', 'undercut', 'gas', 'crater', 'fusion', 'restart', 'cleaning'] as const
export type Facet = (typeof FACETS)[number]
/** How good the hand is at each, on one scale: about -1 at the first coupon, about +1 at the end; at 0 half of the coupons pass. */
export type Skill = Readonly<Record<Facet, number>>

/** How one invented student learns. */
export type Learner = {
  readonly start: number
  /** The level practice leads to, before the exercise's difficulty. */
  readonly ceiling: number
  /** Coupons in which the distance to the ceiling falls to a third. */
  readonly pace: number
  /** Coupons of practice before a knot comes undone; until then the level stays below `plateau`. 0 for most. */
  readonly knotUntil: number
  readonly plateau: number
  /** The share of what was learned that is still there after 100 days without practice. */
  readonly kept: number
  /** Strengths and weak points: added to the level, facet by facet. */
  readonly offsets: Skill
  readonly attendance: number
  readonly couponsPerEvening: number
}

const eachFacet = (value: (facet: Facet) => number): Skill =>
  Object.fromEntries(FACETS.map((facet) => [facet, value(facet)])) as Record<Facet, number>

export function learnerOf(dice: Dice): Learner {
  const weak = dice.pick(FACETS)
  const alsoWeak = dice.chance(0.4) ? dice.pick(FACETS) : null
  const knotted = dice.chance(0.3)
  return {
    start: dice.normal(-1.2, 0.4),
    ceiling: dice.normal(1, 0.65),
    pace: dice.logNormal(5, 0.4),
    knotUntil: knotted ? dice.whole(9, 16) : 0,
    plateau: dice.normal(-0.4, 0.25),
    kept: dice.between(0.15, 0.55),
    offsets: eachFacet((facet) => dice.normal(0.05, 0.25) - (facet === weak ? dice.between(0.5, 1) : 0) - (facet === alsoWeak ? dice.between(0.3, 0.6) : 0)),
    attendance: dice.between(0.78, 0.96),
    couponsPerEvening: dice.between(2, 3.6),
  }
}

/** What a student's hand remembers of one exercise. */
export type Memory = {
  practice: number
  /** The share of it that is out of reach for now. It comes back faster than it was learned. */
  rust: number
  lastDay: number | null
}

/** A few days undo nothing; longer ones undo practice little by little. */
const GRACE_DAYS = 4

const RUST_LEFT_PER_COUPON = 0.7

/** Hands go rusty between two evenings. */
export function rest(memory: Memory, day: number, learner: Learner): void {
  const idle = memory.lastDay === null ? 0 : Math.max(0, day - memory.lastDay - GRACE_DAYS)
  memory.rust = 1 - (1 - memory.rust) * learner.kept ** (idle / 100)
  memory.lastDay = day
}

/** One coupon more. */
export function practiseOnce(memory: Memory): void {
  memory.practice += 1
  memory.rust *= RUST_LEFT_PER_COUPON
}

/**
 * The level in an exercise.
 *
 * @param carriedOver what practice of other exercises brings along, in coupons
 */
export function levelOf(learner: Learner, { practice, rust }: Memory, difficulty: number, carriedOver: number): number {
  const begin = learner.start - difficulty + 0.7 * (1 - Math.exp(-carriedOver / 25))
  const end = Math.max(begin, learner.ceiling - difficulty / 2)
  const level = begin + (end - begin) * (1 - Math.exp(-practice / learner.pace)) * (1 - rust)
  return practice < learner.knotUntil ? Math.min(level, Math.max(begin, learner.plateau)) : level
}

/** Tonight's form: the same for every coupon of the evening. */
export const formTonight = (dice: Dice): number => dice.normal(0, 0.2)

/** The skill that makes one coupon. */
export function skillFor(learner: Learner, level: number, form: number, dice: Dice): Skill {
  const coupon = dice.normal(0, 0.15)
  return eachFacet((facet) => level + form + coupon + learner.offsets[facet] + dice.normal(0, 0.2))
}

/**
 * The arc timer of one pass. Several arcs add up; an arc that burns is known by the moment it was struck, so that a closed or reloaded
 * page goes on counting. Moments are milliseconds since 1970 by the device's own clock.
 */
export type ArcTimer = { readonly struckAt: number | null; readonly arcs: readonly number[] }

export const RESTING_TIMER: ArcTimer = { struckAt: null, arcs: [] }

/** One arc on a class coupon burns seconds to a few minutes; the limits of doubt are this project's choice. */
const LONGEST_ARC_SECONDS = 600
/** So many times the arc time the weld's length and the booth card lead one to expect is doubtful as well. */
const DOUBTFUL_TIMES = 6
const LEAST_DOUBTFUL_SECONDS = 120

/** How long the arc has burned, or that nobody can tell: the device's clock was set back meanwhile. */
export type BurningArc =
  | { readonly kind: 'burning'; readonly seconds: number }
  /** Longer than an arc on this weld burns: whoever welded must say whether the timer was left running. */
  | { readonly kind: 'doubtful'; readonly seconds: number }
  | { readonly kind: 'clock-set-back' }

/** Strikes the arc; one that burns already goes on. */
export function strikeArc(timer: ArcTimer, now: number): ArcTimer {
  return timer.struckAt === null ? { ...timer, struckAt: moment(now) } : timer
}

/**
 * The arc that burns now; null when none does.
 *
 * @param expectedSeconds arc time of the whole weld by its length and the booth card's slowest travel; null when not known
 */
export function burningArc(timer: ArcTimer, now: number, expectedSeconds: number | null = null): BurningArc | null {
  if (timer.struckAt === null) return null
  const seconds = (moment(now) - timer.struckAt) / 1000
  if (seconds < 0) return { kind: 'clock-set-back' }
  const limit = expectedSeconds === null ? LONGEST_ARC_SECONDS : Math.min(LONGEST_ARC_SECONDS, Math.max(LEAST_DOUBTFUL_SECONDS, DOUBTFUL_TIMES * expectedSeconds))
  return { kind: seconds > limit ? 'doubtful' : 'burning', seconds }
}

/** Ends the arc that burns and counts it. An arc of unknown length, after the clock was set back, is left out rather than guessed. */
export function stopArc(timer: ArcTimer, now: number): ArcTimer {
  const arc = burningArc(timer, now)
  return arc === null || arc.kind === 'clock-set-back' ? dropArc(timer) : { struckAt: null, arcs: [...timer.arcs, arc.seconds] }
}

/** Ends the arc that burns and does not count it: the timer was left running. */
export function dropArc(timer: ArcTimer): ArcTimer {
  return { ...timer, struckAt: null }
}

/** Arc time of the arcs that have ended, in seconds; null before the first. */
export function arcSeconds(timer: ArcTimer): number | null {
  return timer.arcs.length === 0 ? null : timer.arcs.reduce((sum, each) => sum + each, 0)
}

function moment(now: number): number {
  if (!Number.isFinite(now)) throw new RangeError(`${now} is not a moment: give the milliseconds of a clock.`)
  return now
}

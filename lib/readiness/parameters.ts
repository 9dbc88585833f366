/** Name of the model and its shipped parameters. Stored with every estimate; a change in what the filter answers changes it. */
export const MODEL_VERSION = 'margin-state-space-1'

/**
 * Parameters of the margin state-space filter. x is the location of a coupon's worst standardised margin
 * (limit less reading, over the rule's scale), so every length here is in those units; gaps are in days.
 */
export type FilterParameters = {
  /** Mean and sd of x at a student's first coupon. */
  readonly m0: number
  readonly s0: number
  /** From coupon to coupon x moves the share rho of the way to mInf, and wanders with sd q1. */
  readonly rho: number
  readonly mInf: number
  readonly q1: number
  /** Extra wander at the first coupon of a new day: variance qs² + qg² · days / 30. */
  readonly qs: number
  readonly qg: number
  /** Time constant, in days, at which what was learnt above m0 is lost after the days of grace. */
  readonly tauF: number
  /** Scale of a coupon's worst margin about x: Student's t with 5 degrees of freedom. */
  readonly s: number
  /** The yes/no rules all pass with chance logistic(c + d · x). */
  readonly c: number
  readonly d: number
  /** Power of every likelihood: below 1 it makes up for what the model leaves out. */
  readonly eta: number
}

/** A gap of this many days undoes nothing. */
export const GRACE_DAYS = 3

/**
 * The parameters a program starts with. Fitted to simulated cohorts and rounded; not measured on real classes.
 * A program with enough series of its own refits them.
 */
export const SHIPPED_PARAMETERS: FilterParameters = Object.freeze({
  m0: -1.2,
  s0: 0.8,
  rho: 0.035,
  mInf: 1.2,
  q1: 0.2,
  qs: 0.2,
  qg: 0.2,
  tauF: 120,
  s: 0.38,
  c: 2.3,
  d: 0.6,
  eta: 0.6,
})

/** @throws RangeError when a parameter is not a number or outside the range in which the model means anything. */
export function checkParameters(p: FilterParameters): void {
  for (const name of Object.keys(SHIPPED_PARAMETERS) as (keyof FilterParameters)[]) {
    const value = p[name]
    if (!Number.isFinite(value)) throw new RangeError(`The readiness parameter ${name} must be a finite number, not ${value}.`)
  }
  for (const name of ['s0', 's', 'tauF'] as const) {
    if (p[name] <= 0) throw new RangeError(`The readiness parameter ${name} must be above 0, not ${p[name]}.`)
  }
  for (const name of ['q1', 'qs', 'qg', 'd'] as const) {
    if (p[name] < 0) throw new RangeError(`The readiness parameter ${name} must not be below 0, not ${p[name]}.`)
  }
  if (p.rho < 0 || p.rho > 1) throw new RangeError(`The readiness parameter rho must lie between 0 and 1, not ${p.rho}.`)
  if (p.eta <= 0 || p.eta > 1) throw new RangeError(`The readiness parameter eta must lie above 0 and up to 1, not ${p.eta}.`)
}

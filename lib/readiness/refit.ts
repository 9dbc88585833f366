import { modelOf, predict, prior, update, type Model } from './model'
import { nelderMead } from './nelder-mead'
import { SHIPPED_PARAMETERS, type FilterParameters } from './parameters'
import { checkCoupons, type PracticeCoupon } from './practice-coupon'

/** Fewer series of practice than this say too little about the parameters. */
export const LEAST_SERIES = 30
/** From this many on the shipped parameters no longer hold the fit back. */
export const FREE_SERIES = 300

/**
 * The parameters that are fitted, on a scale without ends, with the sd by which a program may plausibly differ from the shipped
 * ones: the ridge, and the first step of the search. The sds are this project's choice; eta stays as shipped, because it makes up
 * for what the model leaves out and a fit would trade it against the walk.
 */
const FITTED = [
  { name: 'm0', scale: 'plain', sd: 0.4 },
  { name: 's0', scale: 'log', sd: 0.25 },
  { name: 'rho', scale: 'logit', sd: 0.5 },
  { name: 'mInf', scale: 'plain', sd: 0.4 },
  { name: 'q1', scale: 'log', sd: 0.4 },
  { name: 'qs', scale: 'log', sd: 0.4 },
  { name: 'qg', scale: 'log', sd: 0.4 },
  { name: 'tauF', scale: 'log', sd: 0.5 },
  { name: 's', scale: 'log', sd: 0.25 },
  { name: 'c', scale: 'plain', sd: 0.5 },
  { name: 'd', scale: 'log', sd: 0.4 },
] as const

export type Refit =
  | { readonly kind: 'insufficient'; readonly have: number; readonly need: number }
  | {
      readonly kind: 'refit'
      readonly parameters: FilterParameters
      /** Whether the shipped parameters held the fit back. */
      readonly held: boolean
      readonly series: number
      /** Verdicts forecast one coupon ahead. */
      readonly verdicts: number
      /** Mean log loss of those forecasts, before and after. */
      readonly lossBefore: number
      readonly lossAfter: number
      readonly evaluations: number
    }

/**
 * Parameters fitted to a program's own practice: the least log loss of each verdict forecast from the coupons before it.
 * From 30 series a ridge holds them near the shipped ones (a Gaussian prior on the fitted scale); from 300 they are free.
 * A new version is the caller's to name, store and announce; nothing here replaces the old one.
 *
 * @param series one student's coupons of one exercise each, in order of day; empty ones do not count
 * @param options `evaluations` of the loss to spend (400 when absent), `start` (the shipped parameters when absent)
 * @throws RangeError for a malformed series
 */
export function refit(
  series: readonly (readonly PracticeCoupon[])[],
  { evaluations = 400, start = SHIPPED_PARAMETERS }: { readonly evaluations?: number; readonly start?: FilterParameters } = {},
): Refit {
  const usable = series.filter((coupons) => coupons.length > 0)
  usable.forEach(checkCoupons)
  if (usable.length < LEAST_SERIES) return { kind: 'insufficient', have: usable.length, need: LEAST_SERIES }
  const held = usable.length < FREE_SERIES
  const origin = FITTED.map(({ name, scale }) => toLine(start[name], scale))
  const target = (at: readonly number[]) => {
    const { total } = practiceLoss(usable, parametersAt(at, start))
    return held ? total + at.reduce((sum, x, i) => sum + ((x - origin[i]!) / FITTED[i]!.sd) ** 2 / 2, 0) : total
  }
  const found = nelderMead(target, origin, FITTED.map(({ sd }) => sd / 2), evaluations)
  const parameters = Object.freeze(parametersAt(found.at, start))
  const before = practiceLoss(usable, start)
  const after = practiceLoss(usable, parameters)
  return {
    kind: 'refit', parameters, held, series: usable.length, verdicts: before.verdicts, evaluations: found.evaluations,
    lossBefore: before.total / before.verdicts, lossAfter: after.total / after.verdicts,
  }
}

/** Log loss, summed, of every verdict forecast from the coupons before it. Coupons of less than full weight are learnt from, not forecast. */
export function practiceLoss(series: readonly (readonly PracticeCoupon[])[], parameters: FilterParameters): { readonly total: number; readonly verdicts: number } {
  const model = modelOf(Object.isFrozen(parameters) ? parameters : Object.freeze({ ...parameters }))
  let total = 0
  let verdicts = 0
  for (const coupons of series) {
    let mass: Float64Array = prior(model)
    coupons.forEach((coupon, i) => {
      if (i > 0) mass = predict(mass, coupon.day - coupons[i - 1]!.day, model)
      if ((coupon.weight ?? 1) === 1) {
        total -= Math.log(chanceOf(coupon.accepted, mass, model))
        verdicts++
      }
      mass = update(mass, coupon, model)
    })
  }
  return { total, verdicts }
}

function chanceOf(accepted: boolean, mass: Float64Array, model: Model): number {
  let pass = 0
  for (let i = 0; i < mass.length; i++) pass += mass[i]! * model.pass[i]!
  return Math.max(1e-6, accepted ? pass : 1 - pass)
}

function parametersAt(at: readonly number[], base: FilterParameters): FilterParameters {
  const fitted = Object.fromEntries(FITTED.map(({ name, scale }, i) => [name, fromLine(at[i]!, scale)]))
  return { ...base, ...fitted }
}

type Scale = (typeof FITTED)[number]['scale']

/** Tiny floors keep a parameter shipped or refitted as 0 on the line. */
function toLine(value: number, scale: Scale): number {
  if (scale === 'plain') return value
  if (scale === 'log') return Math.log(Math.max(value, 1e-3))
  const share = Math.min(1 - 1e-4, Math.max(1e-4, value))
  return Math.log(share / (1 - share))
}

function fromLine(x: number, scale: Scale): number {
  if (scale === 'plain') return x
  return scale === 'log' ? Math.exp(Math.min(12, x)) : 1 / (1 + Math.exp(-x))
}

import { GRID, GRID_LOW, GRID_SIZE, GRID_STEP } from './grid'
import { GRACE_DAYS, type FilterParameters } from './parameters'

/** The longest gap the filter answers for. A longer one is a mistyped year. */
export const LONGEST_GAP_DAYS = 36_525

/** Half-width of a normal kernel, in sd, past which its weight (under 1e-12 of the peak) changes no digit anyone reads. */
const REACH = 7.5

/** The share of each grid point's mass that moves to each other one. */
export type Transition = {
  /** `share[i * GRID_SIZE + j]`: from point i to point j. Each row sums to 1. */
  readonly share: Float64Array
  /** First and last point that row i reaches. */
  readonly first: Int16Array
  readonly last: Int16Array
}

/** Where x is expected after a gap: pulled towards mInf, and towards m0 by what `days` without practice undo. Both from the old x. */
export function expectedMove(x: number, days: number, p: FilterParameters): number {
  const lost = days > 0 ? 1 - Math.exp(-Math.max(0, days - GRACE_DAYS) / p.tauF) : 0
  return x + p.rho * (p.mInf - x) - Math.max(x - p.m0, 0) * lost
}

/** Variance of the move: q1² + (h/2)², and after days > 0 also qs² + qg² · days / 30. */
export function moveVariance(days: number, p: FilterParameters): number {
  const everyCoupon = p.q1 * p.q1 + (GRID_STEP / 2) ** 2
  return days > 0 ? everyCoupon + p.qs * p.qs + (p.qg * p.qg * days) / 30 : everyCoupon
}

/**
 * The step from one coupon to the next, `days` later.
 *
 * Each point's normal kernel is evaluated on the grid continued without end in both directions and divided by its sum;
 * what lies past an end of the grid is added to that end point.
 *
 * @throws RangeError when `days` is negative, not finite, or longer than a century.
 */
export function transition(days: number, p: FilterParameters): Transition {
  if (!(days >= 0)) throw new RangeError(`Days between coupons must be 0 or more, not ${days}.`)
  if (days > LONGEST_GAP_DAYS) throw new RangeError(`A gap of ${days} days is longer than a century: check the dates.`)
  const variance = moveVariance(days, p)
  const reach = Math.ceil((REACH * Math.sqrt(variance)) / GRID_STEP)
  const size = GRID_SIZE
  const share = new Float64Array(size * size)
  const first = new Int16Array(size)
  const last = new Int16Array(size)
  for (let i = 0; i < size; i++) {
    const target = (expectedMove(GRID[i]!, days, p) - GRID_LOW) / GRID_STEP
    const nearest = Math.round(target)
    first[i] = clamped(nearest - reach, size - 1)
    last[i] = clamped(nearest + reach, size - 1)
    spread(share.subarray(i * size, (i + 1) * size), target, nearest, reach, (GRID_STEP * GRID_STEP) / (2 * variance))
  }
  return { share, first, last }
}

/**
 * Fills a row with the kernel about `target`, counted in cells from the first grid point; `perCell` is h² / (2 variance).
 * Walks outward from the nearest point: each weight is the one before times a factor that itself shrinks by a constant factor.
 */
function spread(row: Float64Array, target: number, nearest: number, reach: number, perCell: number): void {
  const end = row.length - 1
  const offset = nearest - target
  const shrink = Math.exp(-2 * perCell)
  const centre = Math.exp(-offset * offset * perCell)
  row[clamped(nearest, end)]! += centre
  let sum = centre
  for (const direction of [1, -1]) {
    let weight = centre
    let factor = Math.exp(-(1 + 2 * direction * offset) * perCell)
    for (let k = 1; k <= reach; k++) {
      weight *= factor
      factor *= shrink
      row[clamped(nearest + direction * k, end)]! += weight
      sum += weight
    }
  }
  for (let j = 0; j <= end; j++) row[j]! /= sum
}

function clamped(index: number, end: number): number {
  return index < 0 ? 0 : index > end ? end : index
}

/** Moves the mass one step. */
export function move(mass: Float64Array, { share, first, last }: Transition): Float64Array {
  // A local size: reading an imported binding inside these loops made them eight times slower.
  const size = mass.length
  const moved = new Float64Array(size)
  for (let i = 0; i < size; i++) {
    const from = mass[i]!
    const row = i * size
    const to = last[i]!
    for (let j = first[i]!; j <= to; j++) moved[j]! += from * share[row + j]!
  }
  return moved
}

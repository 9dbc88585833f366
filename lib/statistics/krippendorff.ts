import { requireFinite, requireRows } from './preconditions'

export type MeasurementLevel = 'nominal' | 'ordinal' | 'interval' | 'ratio'

/**
 * Krippendorff's alpha.
 *
 * Purpose: one agreement figure for any number of graders, with gaps, and for verdicts, ranks or measurements.
 * Formula: α = 1 − D_o/D_e over the coincidence matrix of all pairs within a coupon, each coupon's pairs weighted 1/(m_u − 1).
 * Squared difference: nominal 0 or 1; ordinal by ranks between; interval (c − k)²; ratio ((c − k)/(c + k))².
 * Source: Krippendorff, Content Analysis, 4th ed. 2019, chapter 12; Computing Krippendorff's Alpha-Reliability, 2011.
 * Units: none; 1 perfect, 0 chance, below 0 systematic disagreement.
 *
 * @param ratings `ratings[grader][coupon]`, null where that grader did not judge that coupon
 * @throws RangeError when rows differ in length, no coupon has two ratings, all ratings are equal, or a ratio is below 0
 * @example krippendorffAlpha([[1, 2, 3, null], [1, 2, 4, 4]], 'interval') // 0.878
 */
export function krippendorffAlpha(ratings: readonly (readonly (number | null)[])[], level: MeasurementLevel): number {
  const units = pairableUnits(ratings, level)
  const totals = new Map<number, number>()
  units.flat().forEach(value => totals.set(value, (totals.get(value) ?? 0) + 1))
  const values = [...totals.keys()].sort((a, b) => a - b)
  const squared = squaredDifference(level, values, totals)
  const n = units.flat().length
  const observed = units.reduce((sum, unit) => sum + disagreementWithin(unit, squared), 0) / n
  let expected = 0
  values.forEach((c, i) => {
    for (const k of values.slice(i + 1)) expected += 2 * (totals.get(c) ?? 0) * (totals.get(k) ?? 0) * squared(c, k)
  })
  if (expected === 0) throw new RangeError('Alpha says nothing when every rating is the same. Show the raw percentage, or compare coupons that differ.')
  return 1 - observed / (expected / (n * (n - 1)))
}

function pairableUnits(ratings: readonly (readonly (number | null)[])[], level: MeasurementLevel): number[][] {
  requireRows(ratings, 'Ratings', 'The ratings of grader')
  const length = ratings[0]?.length ?? 0
  const units: number[][] = Array.from({ length }, () => [])
  ratings.forEach((row, grader) => {
    if (row.length !== length) throw new RangeError(`Grader ${grader + 1} has ${row.length} ratings where the first has ${length}; write null for a gap.`)
    row.forEach((rating, coupon) => {
      if (rating === null) return
      requireFinite(rating, `The rating of coupon ${coupon + 1} by grader ${grader + 1}`)
      if (level === 'ratio' && rating < 0) throw new RangeError(`Ratio ratings cannot be below 0; grader ${grader + 1} gave ${rating}.`)
      units[coupon]?.push(rating)
    })
  })
  const pairable = units.filter(unit => unit.length > 1)
  if (pairable.length === 0) throw new RangeError('Alpha needs at least one coupon that two graders have rated.')
  return pairable
}

function disagreementWithin(unit: readonly number[], squared: (c: number, k: number) => number): number {
  const pairs = unit.reduce((sum, c, i) => sum + unit.slice(i + 1).reduce((rest, k) => rest + squared(c, k), 0), 0)
  return 2 * pairs / (unit.length - 1)
}

function squaredDifference(level: MeasurementLevel, values: readonly number[], totals: ReadonlyMap<number, number>) {
  if (level === 'nominal') return (c: number, k: number) => (c === k ? 0 : 1)
  if (level === 'interval') return (c: number, k: number) => (c - k) ** 2
  if (level === 'ratio') return (c: number, k: number) => (c === k ? 0 : ((c - k) / (c + k)) ** 2)
  const middle = new Map<number, number>()
  let below = 0
  for (const value of values) {
    const count = totals.get(value) ?? 0
    middle.set(value, below + count / 2)
    below += count
  }
  return (c: number, k: number) => ((middle.get(c) ?? 0) - (middle.get(k) ?? 0)) ** 2
}

import type { Agreement } from './agreement'
import { requireCount, requireRows } from './preconditions'

/** `counts[i][k]`: how many graders gave coupon i the verdict k. */
export type VerdictCounts = readonly (readonly number[])[]

const total = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0)

function requireCounts(counts: VerdictCounts): number {
  requireRows(counts, 'Verdict counts', 'Coupon')
  const q = counts[0]?.length ?? 0
  if (q < 2) throw new RangeError('Verdict counts need at least one coupon and two possible verdicts, such as pass and fail.')
  counts.forEach((row, i) => {
    if (row.length !== q) throw new RangeError(`Coupon ${i + 1} has ${row.length} counts where the first has ${q}.`)
    row.forEach((count, k) => requireCount(count, `The count for coupon ${i + 1}, verdict ${k + 1}`))
  })
  return q
}

/**
 * Fleiss' kappa for a fixed number of graders per coupon.
 *
 * Purpose: agreement beyond chance among several graders, not necessarily the same ones for each coupon.
 * Formula: κ = (P̄ − P_e)/(1 − P_e), P_i = (Σ n_ik² − m)/(m(m − 1)), P_e = Σ p_k²; z from the standard error when graders agree only by chance.
 * Source: Fleiss 1971, Psychol. Bull. 76:378; Fleiss, Nee & Landis 1979, Psychol. Bull. 86:974.
 * Units: none; `standardError` holds under chance agreement, so it tests κ = 0 and makes no interval round κ.
 *
 * @throws RangeError when coupons have different numbers of graders, fewer than two graders, or all verdicts are the same
 * @example fleissKappa([[3, 0], [0, 3], [2, 1], [3, 0]]) // { value: 0.625, standardError: 0.2887, z: 2.165 }
 */
export function fleissKappa(counts: VerdictCounts): Agreement & { readonly z: number } {
  requireCounts(counts)
  const m = total(counts[0] ?? [])
  if (m < 2) throw new RangeError("Fleiss' kappa needs at least two graders per coupon.")
  const odd = counts.findIndex(row => total(row) !== m)
  if (odd >= 0) {
    throw new RangeError(`Fleiss' kappa needs the same number of graders for every coupon: coupon ${odd + 1} has ${total(counts[odd] ?? [])}, the first has ${m}. Use Krippendorff's alpha where verdicts are missing.`)
  }
  const n = counts.length
  const share = (counts[0] ?? []).map((_, k) => total(counts.map(row => row[k] ?? 0)) / (n * m))
  const observed = total(counts.map(row => (total(row.map(count => count * count)) - m) / (m * (m - 1)))) / n
  const expected = total(share.map(p => p * p))
  if (1 - expected < 1e-12) throw new RangeError('Kappa says nothing when every grader gave every coupon the same one verdict. Show the raw percentage or AC1.')
  const value = (observed - expected) / (1 - expected)
  const pq = total(share.map(p => p * (1 - p)))
  const skew = total(share.map(p => p * (1 - p) * (1 - 2 * p)))
  const standardError = Math.sqrt(2 / (n * m * (m - 1))) * Math.sqrt(Math.max(0, pq * pq - skew)) / pq
  return { value, standardError, z: value / standardError }
}

/**
 * Gwet's AC1 for several graders, some of whom may be missing.
 *
 * Purpose: as AC1 for two, with any number of graders per coupon.
 * Formula: (P_o − P_e)/(1 − P_e); P_o averages over coupons with two or more verdicts, π_k over all judged coupons,
 * P_e = Σ π_k(1 − π_k)/(q − 1); linearised variance over coupons, divided by n − 1.
 * Source: Gwet 2008, Br. J. Math. Stat. Psychol. 61:29; Gwet, Handbook of Inter-Rater Reliability, 4th ed. 2014.
 * Units: none.
 *
 * @throws RangeError when fewer than two coupons have two or more verdicts, or counts are not whole
 * @example gwetAc1OfMany([[3, 0], [0, 3], [2, 1], [3, 0]]) // { value: 0.7, standardError: 0.3118 }
 */
export function gwetAc1OfMany(counts: VerdictCounts): Agreement {
  const q = requireCounts(counts)
  const judged = counts.map(row => ({ row, graders: total(row) })).filter(unit => unit.graders > 0)
  const n = judged.length
  const paired = judged.filter(unit => unit.graders > 1).length
  if (paired < 2) throw new RangeError('AC1 needs at least two coupons that two or more graders have judged.')
  const share = Array.from({ length: q }, (_, k) => total(judged.map(({ row, graders }) => (row[k] ?? 0) / graders)) / n)
  const agreeing = ({ row, graders }: { readonly row: readonly number[]; readonly graders: number }) =>
    graders < 2 ? 0 : total(row.map(count => count * (count - 1))) / (graders * (graders - 1))
  const observed = total(judged.map(agreeing)) / paired
  const expected = total(share.map(p => p * (1 - p))) / (q - 1)
  const value = (observed - expected) / (1 - expected)
  const pull = judged.map(unit => {
    const own = unit.graders < 2 ? 0 : n / paired * (agreeing(unit) - expected) / (1 - expected)
    const chance = total(unit.row.map((count, k) => count * (1 - (share[k] ?? 0)))) / (unit.graders * (q - 1))
    return own - 2 * (1 - value) * (chance - expected) / (1 - expected)
  })
  const variance = total(pull.map(x => (x - value) ** 2)) / (n * (n - 1))
  return { value, standardError: Math.sqrt(variance) }
}

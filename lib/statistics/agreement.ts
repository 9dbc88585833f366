import { type AgreementTable, type Shares, sharesOf } from './agreement-table'

/** A chance-corrected agreement (1 is perfect, 0 is what chance gives) with its large-sample standard error. */
export type Agreement = { readonly value: number; readonly standardError: number }
export type KappaWeights = 'linear' | 'quadratic'

/**
 * Raw agreement: the share of coupons on which both inspectors said the same.
 *
 * Purpose: always shown beside the chance-corrected figures.
 * Formula: Σ p_kk.
 * Source: elementary.
 * Units: share from 0 to 1.
 *
 * @throws RangeError when the table is not square, is empty, or holds anything but counts
 * @example percentAgreement([[40, 5], [3, 2]]) // 0.84
 */
export function percentAgreement(table: AgreementTable): number {
  const { cell, first } = sharesOf(table)
  return Math.min(1, first.reduce((sum, _, k) => sum + cell(k, k), 0))
}

/**
 * Cohen's kappa for two inspectors.
 *
 * Purpose: agreement beyond chance. Falls when nearly all coupons pass although the inspectors agree: show it with AC1 and the raw percentage.
 * Formula: κ = (p_o − p_e)/(1 − p_e), p_e = Σ p_k· p_·k; standard error of Fleiss, Cohen & Everitt.
 * Source: Cohen 1960, Educ. Psychol. Meas. 20:37; Fleiss, Cohen & Everitt 1969, Psychol. Bull. 72:323.
 * Units: none, from −1 to 1.
 *
 * @throws RangeError when the table is not square, is empty, holds anything but counts, or has all verdicts in one category (kappa then says nothing)
 * @example cohensKappa([[40, 5], [3, 2]]) // { value: 0.245, standardError: 0.189 }
 */
export function cohensKappa(table: AgreementTable): Agreement {
  return kappaWith(sharesOf(table), (i, j) => (i === j ? 1 : 0))
}

/**
 * Weighted kappa for two inspectors and ordered verdicts.
 *
 * Purpose: being one grade apart counts less than being three apart.
 * Formula: κ_w = (Σ w p_ij − Σ w p_i· p_·j)/(1 − Σ w p_i· p_·j), w = 1 − |i − j|/(q − 1), or its square for quadratic.
 * Source: Cohen 1968, Psychol. Bull. 70:213; standard error of Fleiss, Cohen & Everitt 1969, Psychol. Bull. 72:323.
 * Units: none, at most 1.
 *
 * @throws RangeError when the table is not square, is empty, holds anything but counts, or has all verdicts in one category
 * @example weightedKappa([[13, 0, 0], [0, 20, 7], [0, 4, 56]], 'linear') // { value: 0.8429, standardError: 0.0479 }
 */
export function weightedKappa(table: AgreementTable, weights: KappaWeights): Agreement {
  const shares = sharesOf(table)
  const distance = (i: number, j: number) => Math.abs(i - j) / (shares.categories - 1)
  return kappaWith(shares, weights === 'linear' ? (i, j) => 1 - distance(i, j) : (i, j) => 1 - distance(i, j) ** 2)
}

function kappaWith({ n, cell, first, second, sum }: Shares, weight: (i: number, j: number) => number): Agreement {
  const at = (shares: readonly number[], i: number) => shares[i] ?? 0
  const observed = sum((i, j) => weight(i, j) * cell(i, j))
  const expected = sum((i, j) => weight(i, j) * at(first, i) * at(second, j))
  if (1 - expected < 1e-12) {
    throw new RangeError('Kappa says nothing when both inspectors gave every coupon the same one verdict. Show the raw percentage or AC1, or compare coupons that differ.')
  }
  const value = (observed - expected) / (1 - expected)
  const rowWeight = first.map((_, i) => second.reduce((total, share, j) => total + share * weight(i, j), 0))
  const columnWeight = second.map((_, j) => first.reduce((total, share, i) => total + share * weight(i, j), 0))
  const spread = sum((i, j) => cell(i, j) * (weight(i, j) - (at(rowWeight, i) + at(columnWeight, j)) * (1 - value)) ** 2)
  const variance = (spread - (value - expected * (1 - value)) ** 2) / (n * (1 - expected) ** 2)
  return { value, standardError: Math.sqrt(Math.max(0, variance)) }
}

/**
 * Gwet's AC1 for two inspectors.
 *
 * Purpose: agreement beyond chance that stays sensible when nearly all coupons pass. Lead with it for yes/no verdicts.
 * Formula: (p_o − p_e)/(1 − p_e), p_e = Σ π_k(1 − π_k)/(q − 1), π_k = (p_k· + p_·k)/2; the variance divides by n.
 * Source: Gwet 2008, Br. J. Math. Stat. Psychol. 61:29; Gwet, Handbook of Inter-Rater Reliability, 4th ed. 2014.
 * Units: none, from −1 to 1.
 *
 * @throws RangeError when the table is not square, is empty, or holds anything but counts
 * @example gwetAc1([[40, 5], [3, 2]]) // { value: 0.797, standardError: 0.0757 }
 */
export function gwetAc1(table: AgreementTable): Agreement {
  const { n, categories: q, cell, first, second, sum } = sharesOf(table)
  const share = first.map((p, k) => (p + (second[k] ?? 0)) / 2)
  const at = (k: number) => share[k] ?? 0
  const observed = sum((i, j) => (i === j ? cell(i, j) : 0))
  const expected = share.reduce((total, p) => total + p * (1 - p), 0) / (q - 1)
  const value = (observed - expected) / (1 - expected)
  const agreeing = share.reduce((total, p, k) => total + cell(k, k) * (1 - p), 0) / (q - 1) - observed * expected
  const spread = sum((i, j) => cell(i, j) * (1 - (at(i) + at(j)) / 2) ** 2) / (q - 1) ** 2 - expected ** 2
  const variance = (observed * (1 - observed) - 4 * (1 - value) * agreeing + 4 * (1 - value) ** 2 * spread) / (n * (1 - expected) ** 2)
  return { value, standardError: Math.sqrt(Math.max(0, variance)) }
}

import { cohensKappa, type Agreement } from './agreement'
import { sharesOf, type AgreementTable } from './agreement-table'

/**
 * Scott's pi: kappa for pairs of inspectors who change from coupon to coupon.
 *
 * Purpose: agreement beyond chance where "first" and "second" are not two persons. It is Fleiss' kappa for two verdicts a coupon, and
 * unlike Cohen's kappa does not hang on which of the two is called the first.
 * Formula: (p_o − p_e)/(1 − p_e), p_e = Σ π_k², π_k = (p_k· + p_·k)/2. Standard error of Fleiss, Cohen & Everitt on the table with its
 * mirror image added: there the two share their margins, so value and linearised variance are those of pi.
 * Source: Scott 1955, Public Opinion Quarterly 19:321; Gwet 2008, Br. J. Math. Stat. Psychol. 61:29.
 * Units: none, from −1 to 1.
 *
 * @throws RangeError when the table is not square, is empty, holds anything but counts, or has all verdicts in one category (pi then says nothing)
 * @example scottsPi([[13, 0, 0], [0, 20, 7], [0, 4, 56]]) // { value: 0.7962, standardError: 0.0591 }
 */
export function scottsPi(table: AgreementTable): Agreement {
  sharesOf(table)
  const { value, standardError } = cohensKappa(table.map((row, i) => row.map((count, j) => count + (table[j]?.[i] ?? 0))))
  return { value, standardError: standardError * Math.SQRT2 } // every pair stands in the doubled table twice
}

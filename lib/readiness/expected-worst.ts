import normalCdf from '@stdlib/stats-base-dists-normal-cdf'

/** Beyond this many sd the integrand is below the last digit for any n met in practice. */
const FAR = 9
const STEPS = 1800

/**
 * How far, in sd, the worst of n independent normal readings lies from their mean on average: 0 at 1, 1.163 at 5, 1.539 at 10, 1.867 at 20.
 * E[max] = ∫₀^∞ (1 − Φⁿ(x)) − Φⁿ(−x) dx, by Simpson's rule.
 * Source: Tippett 1925, Biometrika 17:364 (the values, from memory; recomputed here).
 *
 * @throws RangeError when n is not a whole number from 1 to 10,000
 */
export function expectedWorst(n: number): number {
  if (!Number.isInteger(n) || n < 1 || n > 10_000) throw new RangeError(`The number of stations must be a whole number from 1 to 10,000, not ${n}.`)
  const step = FAR / STEPS
  let sum = 0
  for (let i = 0; i <= STEPS; i++) {
    const x = i * step
    const height = 1 - normalCdf(x, 0, 1) ** n - normalCdf(-x, 0, 1) ** n
    sum += height * (i === 0 || i === STEPS ? 1 : i % 2 === 1 ? 4 : 2)
  }
  return (sum * step) / 3
}

const SQRT5 = Math.sqrt(5)

/**
 * Cumulative distribution of Student's t with 5 degrees of freedom, in closed form:
 * 1/2 + (θ + sin θ cos θ (1 + 2/3 cos² θ)) / π with θ = atan(t / √5).
 * Source: Abramowitz & Stegun 26.7.3 (odd degrees of freedom), from memory; tested against published quantiles.
 */
export function t5Cdf(t: number): number {
  const theta = Math.atan(t / SQRT5)
  const cos = Math.cos(theta)
  return 0.5 + (theta + Math.sin(theta) * cos * (1 + (2 / 3) * cos * cos)) / Math.PI
}

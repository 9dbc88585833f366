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

/** Log density of Student's t with 5 degrees of freedom at z, without its constant. Past 1e100 it falls no further. */
export function t5LogKernel(z: number): number {
  const kept = Math.min(1e100, Math.max(-1e100, z))
  return -3 * Math.log1p((kept * kept) / 5)
}

/** A number that was read, with the standard deviation of its error. Errors of different readings are independent. */
export type Reading = { readonly value: number; readonly sd: number }

/** Step of the numerical derivative, as a share of the standard deviation: small enough to be straight, large enough to be exact. */
const STEP = 1e-3

/**
 * Results of a calculation and their standard deviations, to first order: sd² of a result is Σ (∂result/∂reading · sd of the reading)²,
 * the derivatives by central differences (the law of propagation of uncertainty, JCGM 100:2008 (GUM), 5.1.2; from memory).
 *
 * Good while the calculation is nearly straight over the errors; the results themselves are not corrected for curvature.
 *
 * @param calculate takes the values in the order of the readings, and always returns as many results
 */
export function propagate(readings: readonly Reading[], calculate: (values: readonly number[]) => readonly number[]): Reading[] {
  const values = readings.map(({ value }) => value)
  const results = calculate(values)
  const variances = results.map(() => 0)
  readings.forEach(({ sd }, index) => {
    if (sd === 0) return
    const shifted = (by: number): readonly number[] => calculate(values.map((value, at) => (at === index ? value + by * STEP * sd : value)))
    const [above, below] = [shifted(1), shifted(-1)]
    results.forEach((_, at) => {
      variances[at] = (variances[at] ?? 0) + (((above[at] ?? 0) - (below[at] ?? 0)) / (2 * STEP)) ** 2
    })
  })
  return results.map((value, at) => ({ value, sd: Math.sqrt(variances[at] ?? 0) }))
}

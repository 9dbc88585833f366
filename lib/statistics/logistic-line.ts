import { requireSameLength } from './preconditions'

export type LogisticLine = {
  readonly intercept: number
  readonly slope: number
  readonly interceptStandardError: number
  readonly slopeStandardError: number
}

/**
 * Logistic regression on one quantity, by Newton's method.
 *
 * Purpose: the fit under the calibration line.
 * Formula: maximises Σ y η − ln(1 + e^η), η = intercept + slope · x; standard errors from the inverse information.
 * Source: McCullagh & Nelder, Generalized Linear Models, 2nd ed. 1989, chapter 4.
 * Units: logits; the slope per unit of x.
 *
 * @throws RangeError when x never varies, or a threshold on x splits the ones from the zeros (no finite line fits best then)
 * @example fitLogisticLine([-1, 0, 0.5, 1, 2], [0, 1, 0, 1, 1]) // { intercept: -0.274, slope: 1.88 }
 */
export function fitLogisticLine(x: readonly number[], y: readonly (0 | 1)[]): LogisticLine {
  requireOverlap(x, y)
  const centre = x.reduce((sum, value) => sum + value, 0) / x.length
  const scale = Math.sqrt(x.reduce((sum, value) => sum + (value - centre) ** 2, 0) / x.length)
  const z = x.map(value => (value - centre) / scale)
  let [a, b] = [0, 0]
  let height = logLikelihood(z, y, a, b)
  for (let round = 0; round < 100; round += 1) {
    const { gradA, gradB, aa, ab, bb } = derivatives(z, y, a, b)
    const determinant = aa * bb - ab * ab
    let stepA = (bb * gradA - ab * gradB) / determinant
    let stepB = (aa * gradB - ab * gradA) / determinant
    let next = logLikelihood(z, y, a + stepA, b + stepB)
    for (let halving = 0; halving < 40 && !(next >= height); halving += 1) {
      stepA /= 2
      stepB /= 2
      next = logLikelihood(z, y, a + stepA, b + stepB)
    }
    if (!(next >= height)) break // at the top, to the last digit
    a += stepA
    b += stepB
    height = next
    if (Math.abs(stepA) + Math.abs(stepB) < 1e-13 * (1 + Math.abs(a) + Math.abs(b))) break
  }
  const { aa, ab, bb } = derivatives(z, y, a, b)
  const determinant = aa * bb - ab * ab
  const [varianceA, varianceB, covariance] = [bb / determinant, aa / determinant, -ab / determinant]
  const lever = centre / scale
  return {
    intercept: a - b * lever,
    slope: b / scale,
    interceptStandardError: Math.sqrt(varianceA - 2 * lever * covariance + lever * lever * varianceB),
    slopeStandardError: Math.sqrt(varianceB) / scale,
  }
}

function requireOverlap(x: readonly number[], y: readonly (0 | 1)[]): void {
  requireSameLength(x, 'The forecasts', y, 'the outcomes')
  let [least0, most0, least1, most1] = [Infinity, -Infinity, Infinity, -Infinity]
  x.forEach((value, i) => {
    if (y[i] === 1) [least1, most1] = [Math.min(least1, value), Math.max(most1, value)]
    else [least0, most0] = [Math.min(least0, value), Math.max(most0, value)]
  })
  if (least0 === Infinity || least1 === Infinity) {
    throw new RangeError('A calibration line needs at least one result that came true and one that did not. Wait for more results.')
  }
  if (Math.min(least0, least1) === Math.max(most0, most1)) {
    throw new RangeError('A calibration line needs forecasts that differ; all of them are the same.')
  }
  if (most0 <= least1 || most1 <= least0) {
    throw new RangeError('One forecast value splits what came true from what did not, so no finite line fits best. Wait for more results.')
  }
}

function logLikelihood(z: readonly number[], y: readonly (0 | 1)[], a: number, b: number): number {
  return z.reduce((sum, value, i) => {
    const eta = a + b * value
    return sum + (y[i] === 1 ? eta : 0) - Math.max(eta, 0) - Math.log1p(Math.exp(-Math.abs(eta)))
  }, 0)
}

function derivatives(z: readonly number[], y: readonly (0 | 1)[], a: number, b: number) {
  let [gradA, gradB, aa, ab, bb] = [0, 0, 0, 0, 0]
  z.forEach((value, i) => {
    const p = 1 / (1 + Math.exp(-(a + b * value)))
    const rest = (y[i] ?? 0) - p
    const weight = p * (1 - p)
    gradA += rest
    gradB += rest * value
    aa += weight
    ab += weight * value
    bb += weight * value * value
  })
  return { gradA, gradB, aa, ab, bb }
}

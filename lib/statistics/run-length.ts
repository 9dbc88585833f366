import normalCdf from '@stdlib/stats-base-dists-normal-cdf'
import { requireFinite, requireNamed, requirePositive } from './preconditions'

const NODES = 64

/**
 * Average run length of a two-sided CUSUM chart.
 *
 * Purpose: how many values between false alarms (shift 0), and how many until a shift is noticed, before k and h are chosen.
 * Formula: one side L(s) = 1 + L(0)Φ(k − δ − s) + ∫₀ʰ L(y)φ(y + k − δ − s)dy, by Gauss-Legendre; both sides 1/L = 1/L⁺ + 1/L⁻.
 * Source: Page 1954, Biometrika 41:100; Lucas & Crosier 1982, Technometrics 24:199.
 * Units: values until the signal; k, h and shift in standard deviations of the values.
 *
 * @throws RangeError when k is below 0, h is not above 0 or beyond 20, the shift is not finite, or the run would exceed a billion values
 * @example cusumRunLength({ k: 0.5, h: 5 }, 1) // 10.376
 */
export function cusumRunLength(chart: { readonly k: number; readonly h: number }, shift: number): number {
  const { k, h } = requireNamed(chart, 'The allowance k and the limit h')
  requireFinite(k, 'The allowance k')
  if (k < 0) throw new RangeError(`The allowance k must not be below 0; it is ${k}.`)
  requirePositive(h, 'The limit h')
  if (h > 20) throw new RangeError(`The limit h counts standard deviations here and may be at most 20, not ${h}: divide it by sigma.`)
  requireFinite(shift, 'The shift')
  const oneSided = (delta: number) => {
    const { points, weights } = gaussLegendre(0, h)
    const from = (s: number) => [normalCdf(k - delta - s, 0, 1), ...points.map((y, j) => (weights[j] ?? 0) * density(y + k - delta - s))]
    return solveRunLength([0, ...points].map(from))[0] ?? 0
  }
  return requireReachable(1 / (1 / oneSided(shift) + 1 / oneSided(-shift)))
}

/**
 * Average run length of an EWMA chart with steady-state limits.
 *
 * Purpose: as for the CUSUM chart, before λ and the width are chosen.
 * Formula: L(z) = 1 + (1/λ)∫ L(y)φ((y − (1 − λ)z)/λ − δ)dy over the limits ± width · √(λ/(2 − λ)), by Gauss-Legendre.
 * Source: Crowder 1987, Technometrics 29:401.
 * Units: values until the signal; width and shift in standard deviations of the values.
 *
 * @throws RangeError when λ is below 0.05 or above 1, the width is not above 0 or beyond 5, the shift is not finite, or the run would exceed a billion values
 * @example ewmaRunLength({ lambda: 0.2, width: 2.962 }, 1) // 10.542
 */
export function ewmaRunLength(chart: { readonly lambda: number; readonly width: number }, shift: number): number {
  const { lambda, width } = requireNamed(chart, 'Lambda and the width')
  if (!(lambda >= 0.05 && lambda <= 1)) throw new RangeError(`Lambda must lie from 0.05 to 1, such as 0.2, not ${String(lambda)}.`)
  requirePositive(width, 'The width')
  if (width > 5) throw new RangeError(`The width counts standard deviations and must be at most 5, not ${width}.`)
  requireFinite(shift, 'The shift')
  const edge = width * Math.sqrt(lambda / (2 - lambda))
  const { points, weights } = gaussLegendre(-edge, edge)
  const from = (z: number) => [0, ...points.map((y, j) => (weights[j] ?? 0) / lambda * density((y - (1 - lambda) * z) / lambda - shift))]
  return requireReachable(solveRunLength([0, ...points].map(from))[0] ?? 0)
}

/** Beyond a billion values the equations lose their digits, and no chart runs that long. */
function requireReachable(runLength: number): number {
  if (runLength >= 1 && runLength < 1e9) return runLength
  throw new RangeError('With these limits the chart would run for more than a billion values without a signal: choose tighter ones.')
}

const density = (x: number) => Math.exp(-x * x / 2) / Math.sqrt(2 * Math.PI)

/** Nodes and weights of Gauss-Legendre quadrature, by Newton's method on the Legendre polynomial. */
function gaussLegendre(from: number, to: number) {
  const half = (to - from) / 2
  const points: number[] = []
  const weights: number[] = []
  for (let i = 0; i < NODES; i += 1) {
    let x = Math.cos(Math.PI * (i + 0.75) / (NODES + 0.5))
    let slope = 1
    for (let round = 0; round < 100; round += 1) {
      let [previous, current] = [1, x]
      for (let degree = 2; degree <= NODES; degree += 1) {
        [previous, current] = [current, ((2 * degree - 1) * x * current - (degree - 1) * previous) / degree]
      }
      slope = NODES * (x * current - previous) / (x * x - 1)
      const step = current / slope
      x -= step
      if (Math.abs(step) < 1e-15) break
    }
    points.push(from + half * (1 + x))
    weights.push(2 * half / ((1 - x * x) * slope * slope))
  }
  return { points, weights }
}

/** Solves L = 1 + M·L, by elimination with the largest pivot. */
function solveRunLength(transition: readonly (readonly number[])[]): number[] {
  const rows = transition.map((row, i) => [...row.map((value, j) => (i === j ? 1 : 0) - value), 1])
  const size = rows.length
  for (let column = 0; column < size; column += 1) {
    let best = column
    for (let i = column + 1; i < size; i += 1) {
      if (Math.abs(rows[i]?.[column] ?? 0) > Math.abs(rows[best]?.[column] ?? 0)) best = i
    }
    const pivot = rows[best] ?? []
    rows[best] = rows[column] ?? []
    rows[column] = pivot
    for (let i = 0; i < size; i += 1) {
      const row = rows[i] ?? []
      const factor = i === column ? 0 : (row[column] ?? 0) / (pivot[column] ?? 1)
      if (factor !== 0) for (let j = column; j <= size; j += 1) row[j] = (row[j] ?? 0) - factor * (pivot[j] ?? 0)
    }
  }
  return rows.map((row, i) => (row[size] ?? 0) / (row[i] ?? 1))
}

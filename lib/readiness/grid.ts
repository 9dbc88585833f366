/** The grid that carries the belief about x: 121 points on [-3.5, 2.5]. */
export const GRID_LOW = -3.5
export const GRID_STEP = 0.05
export const GRID_SIZE = 121

export const GRID: readonly number[] = Array.from({ length: GRID_SIZE }, (_, i) => GRID_LOW + i * GRID_STEP)

/** A function's values over the grid. */
export function overGrid(f: (x: number, i: number) => number): Float64Array {
  const points = GRID
  const values = new Float64Array(points.length)
  for (let i = 0; i < values.length; i++) values[i] = f(points[i]!, i)
  return values
}

/** Scales masses to sum 1, in place. @throws RangeError when there is no mass to scale. */
export function normalise(mass: Float64Array): Float64Array {
  let sum = 0
  for (const m of mass) sum += m
  if (!(sum > 0 && sum < Infinity)) throw new RangeError('The readiness belief holds no mass: its parameters and coupons contradict each other.')
  for (let i = 0; i < mass.length; i++) mass[i] = mass[i]! / sum
  return mass
}

/**
 * The grid value below which the share `q` of the mass lies, each point's mass spread evenly over its cell
 * (the point ± half a step, the end points' cells reaching half a step past the ends).
 */
export function quantile(mass: ArrayLike<number>, q: number): number {
  let below = 0
  for (let i = 0; i < mass.length; i++) {
    const here = mass[i]!
    if (here > 0 && below + here >= q) return GRID_LOW + (i - 0.5 + Math.max(0, q - below) / here) * GRID_STEP
    below += here
  }
  return GRID_LOW + (mass.length - 0.5) * GRID_STEP
}

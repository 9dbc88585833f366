/** `evaluations`: how often the function was asked. */
export type Minimum = { readonly at: readonly number[]; readonly value: number; readonly evaluations: number }

type Vertex = { readonly at: readonly number[]; readonly value: number }

/**
 * The lowest point found by a downhill simplex: reflect, stretch, contract or shrink, with the usual factors 1, 2, 1/2, 1/2.
 * Deterministic. Source: Nelder & Mead 1965, The Computer Journal 7:308 (from memory).
 *
 * @param steps size of the first step along each coordinate
 * @param most evaluations to spend
 * @param enough stop when the simplex's values differ by less
 */
export function nelderMead(f: (at: readonly number[]) => number, start: readonly number[], steps: readonly number[], most: number, enough = 1e-8): Minimum {
  let evaluations = 0
  const visit = (at: readonly number[]): Vertex => {
    evaluations++
    const value = f(at)
    return { at, value: Number.isNaN(value) ? Infinity : value }
  }
  const order = (vertices: Vertex[]) => vertices.sort((a, b) => a.value - b.value)

  const simplex = order([visit(start), ...start.map((_, i) => visit(start.map((x, j) => (i === j ? x + steps[i]! : x))))])
  const n = start.length
  while (evaluations < most && simplex[n]!.value - simplex[0]!.value > enough) {
    const best = simplex[0]!
    const worst = simplex[n]!
    const centre = start.map((_, j) => simplex.slice(0, n).reduce((total, { at }) => total + at[j]!, 0) / n)
    const along = (factor: number) => visit(centre.map((c, j) => c + factor * (worst.at[j]! - c)))
    const reflected = along(-1)
    if (reflected.value < best.value) {
      const stretched = along(-2)
      simplex[n] = stretched.value < reflected.value ? stretched : reflected
    } else if (reflected.value < simplex[n - 1]!.value) {
      simplex[n] = reflected
    } else {
      const contracted = reflected.value < worst.value ? along(-0.5) : along(0.5)
      if (contracted.value < Math.min(reflected.value, worst.value)) simplex[n] = contracted
      else for (let i = 1; i <= n; i++) simplex[i] = visit(simplex[i]!.at.map((x, j) => best.at[j]! + (x - best.at[j]!) / 2))
    }
    order(simplex)
  }
  return { ...simplex[0]!, evaluations }
}

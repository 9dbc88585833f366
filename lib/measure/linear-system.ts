/**
 * Solves A·x = b by Gaussian elimination with partial pivoting.
 *
 * @param rows each row of A with its b at the end; n rows of n + 1 numbers
 * @throws RangeError when the rows do not determine x
 */
export function solveLinear(rows: readonly (readonly number[])[]): number[] {
  const size = rows.length
  const table = rows.map((row) => [...row])
  const cell = (row: number, column: number): number => table[row]?.[column] ?? 0
  for (let column = 0; column < size; column += 1) {
    let pivot = column
    for (let row = column + 1; row < size; row += 1) if (Math.abs(cell(row, column)) > Math.abs(cell(pivot, column))) pivot = row
    const chosen = table[pivot]
    const here = table[column]
    const lead = cell(pivot, column)
    if (chosen === undefined || here === undefined || !(Math.abs(lead) > 1e-12)) throw new RangeError('The equations do not determine the unknowns.')
    table[pivot] = here
    table[column] = chosen
    for (let row = column + 1; row < size; row += 1) {
      const factor = cell(row, column) / lead
      table[row] = table[row]?.map((value, at) => value - factor * (chosen[at] ?? 0)) ?? []
    }
  }
  const solution = new Array<number>(size).fill(0)
  for (let row = size - 1; row >= 0; row -= 1) {
    const known = solution.reduce((sum, value, column) => (column > row ? sum + cell(row, column) * value : sum), 0)
    solution[row] = (cell(row, size) - known) / cell(row, row)
  }
  return solution
}

import { requireCount, requireRows } from './preconditions'

/** `table[i][j]`: how often the first inspector said i and the second said j. Square, whole counts. */
export type AgreementTable = readonly (readonly number[])[]

export type Shares = {
  readonly n: number
  readonly categories: number
  /** Share of pairs in cell i, j. */
  readonly cell: (i: number, j: number) => number
  /** Share of verdicts i from the first inspector. */
  readonly first: readonly number[]
  /** Share of verdicts j from the second inspector. */
  readonly second: readonly number[]
  /** Sum of `term` over all cells. */
  readonly sum: (term: (i: number, j: number) => number) => number
}

/** The table as shares with its margins. Throws RangeError when it is not a square table of counts with something in it. */
export function sharesOf(table: AgreementTable): Shares {
  requireRows(table, 'An agreement table', 'Row')
  const q = table.length
  if (q < 2) throw new RangeError(`An agreement table needs at least two verdicts, such as pass and fail; it has ${q}.`)
  table.forEach((row, i) => {
    if (row.length !== q) throw new RangeError(`An agreement table must be square: row ${i + 1} has ${row.length} entries, not ${q}.`)
    row.forEach((count, j) => requireCount(count, `The count in row ${i + 1}, column ${j + 1}`))
  })
  const n = table.flat().reduce((sum, count) => sum + count, 0)
  if (n === 0) throw new RangeError('The agreement table is empty: no coupon has been judged by both inspectors.')
  const index = table.map((_, i) => i)
  const cell = (i: number, j: number) => (table[i]?.[j] ?? 0) / n
  const sum = (term: (i: number, j: number) => number) =>
    index.reduce((total, i) => total + index.reduce((rowTotal, j) => rowTotal + term(i, j), 0), 0)
  return {
    n,
    categories: q,
    cell,
    first: index.map(i => index.reduce((total, j) => total + cell(i, j), 0)),
    second: index.map(j => index.reduce((total, i) => total + cell(i, j), 0)),
    sum,
  }
}

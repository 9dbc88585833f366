/** A cell: text, a number, or nothing known. */
export type CsvCell = string | number | null

/** Characters with which a spreadsheet takes text for a formula, after the apostrophes that guard against it: one more tells the guard's from the text's own. */
const STARTS_FORMULA = /^'*[=+\-@\t\r\n]/
/** The semicolon and the tab, too: a spreadsheet that takes one of them for the sign between cells must not find a second cell in a name. */
const NEEDS_QUOTES = /[",;\t\r\n]/
const GUARDED = /^'+[=+\-@\t\r\n]/

/**
 * Rows as comma-separated values.
 *
 * Purpose: a file that a spreadsheet and a script read alike. Numbers are written as they are; null is an empty cell, never 0. Text that
 * a spreadsheet would run as a formula gets an apostrophe before it, so that a name somebody typed stays a name.
 * Source: RFC 4180 for commas, quotes and line ends; OWASP, "CSV Injection", for the apostrophe.
 *
 * @param rows the header first; every row as long as the header
 * @throws RangeError for a number that is not finite, or a row of another length than the first
 */
export function csvText(rows: readonly (readonly CsvCell[])[]): string {
  const width = rows[0]?.length ?? 0
  rows.forEach((row, index) => {
    if (row.length !== width) throw new RangeError(`Row ${index + 1} has ${row.length} cells where the header has ${width}.`)
  })
  return rows.map((row) => `${row.map(cellText).join(',')}\r\n`).join('')
}

/** A cell's text as it was before csvText guarded it. */
export const withoutGuard = (cell: string): string => (GUARDED.test(cell) ? cell.slice(1) : cell)

function cellText(cell: CsvCell): string {
  if (cell === null) return ''
  if (typeof cell === 'number') {
    if (!Number.isFinite(cell)) throw new RangeError(`${cell} cannot be written as a number.`)
    return String(cell)
  }
  const safe = STARTS_FORMULA.test(cell) ? `'${cell}` : cell
  return NEEDS_QUOTES.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe
}

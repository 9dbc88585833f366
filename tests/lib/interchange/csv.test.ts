// Line ends, quotes and commas: RFC 4180, section 2. Text a spreadsheet would run: OWASP, "CSV Injection".
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { csvText, withoutGuard } from '@/lib/interchange/csv'

describe('comma-separated values', () => {
  it('end every line with CR LF, the last one too (RFC 4180, 2.1 and 2.2)', () => {
    expect(csvText([['class', 'rate'], ['Stick', 0.63]])).toBe('class,rate\r\nStick,0.63\r\n')
  })

  it.each([
    ['a comma', 'Tee, 2F', '"Tee, 2F"'],
    ['a quote, doubled', '3/8" plate', '"3/8"" plate"'],
    ['a line feed', 'two\nlines', '"two\nlines"'],
    ['a carriage return', 'two\rlines', '"two\rlines"'],
  ])('quote text with %s (RFC 4180, 2.6 and 2.7)', (_what, text, written) => {
    expect(csvText([[text]])).toBe(`${written}\r\n`)
  })

  it.each(['=1+1', '+1', '-1', '@SUM(A1)'])('keep %j from being run as a formula', (text) => {
    expect(csvText([[text]])).toBe(`'${text}\r\n`)
  })

  it('keep text behind a tab from being run as a formula, in quotes for readers that part cells by tabs', () => {
    expect(csvText([['\t=1+1', 'a;=1+1']])).toBe(`"'\t=1+1","a;=1+1"\r\n`)
  })

  it('quote what is both a formula and has a comma', () => {
    expect(csvText([['=HYPERLINK("x","y")']])).toBe(`"'=HYPERLINK(""x"",""y"")"\r\n`)
  })

  it('leave a number below zero a number', () => {
    expect(csvText([[-0.25, 0]])).toBe('-0.25,0\r\n')
  })

  it('leave a cell that is not known empty: it is not 0', () => {
    expect(csvText([['a', null, 'c']])).toBe('a,,c\r\n')
  })

  it('refuse what is no number, and a row of another length', () => {
    expect(() => csvText([[Number.NaN]])).toThrow('NaN cannot be written as a number.')
    expect(() => csvText([['a', 'b'], ['c']])).toThrow('Row 2 has 1 cells where the header has 2.')
  })

  it('read back as written, whatever the text, once the guard is taken off', () => {
    const table = fc.integer({ min: 1, max: 4 }).chain((width) =>
      fc.array(fc.array(fc.string({ unit: fc.constantFrom('a', 'é', ' ', ',', '"', '\n', '\r', '=', '-', "'", ';', '\t') }), { minLength: width, maxLength: width }), { minLength: 1, maxLength: 4 }))
    fc.assert(fc.property(table, (rows) => {
      const cells = readCsv(csvText(rows))
      expect(cells.flat().filter((cell) => /^[=+\-@\t\r\n]/.test(cell))).toEqual([])
      expect(cells.map((row) => row.map(withoutGuard))).toEqual(rows)
    }))
  })
})

/** A reader of RFC 4180 written for this test, character by character. */
function readCsv(text: string): string[][] {
  const rows: string[][] = []
  let row: string[] = []
  let cell = ''
  let quoted = false
  for (let i = 0; i < text.length; i += 1) {
    const char = text[i] ?? ''
    if (quoted) {
      if (char !== '"') cell += char
      else if (text[i + 1] === '"') { cell += '"'; i += 1 }
      else quoted = false
    } else if (char === '"' && cell === '') quoted = true
    else if (char === ',') { row.push(cell); cell = '' }
    else if (char === '\r' && text[i + 1] === '\n') { row.push(cell); rows.push(row); row = []; cell = ''; i += 1 }
    else cell += char
  }
  return rows
}

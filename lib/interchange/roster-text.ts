const QUOTE = '"'
const DELIMITERS = [',', ';', '\t'] as const

/** A record of a delimited file: the line it starts on, counted from 1, and its cells, trimmed. */
export type RosterRecord = { readonly line: number; readonly cells: readonly string[] }

/**
 * The text of a file that a spreadsheet or a student register wrote.
 *
 * UTF-16 is known by its byte-order mark; anything else is UTF-8 if it reads as UTF-8, and Windows-1252 if not, which is what
 * spreadsheets on Windows write. The byte-order mark is not part of the text.
 * Source: WHATWG Encoding Standard, "BOM sniff" and "utf-8 decode without BOM or fail".
 */
export function rosterText(bytes: Uint8Array): string {
  const [first, second] = bytes
  if (first === 0xff && second === 0xfe) return new TextDecoder('utf-16le').decode(bytes)
  if (first === 0xfe && second === 0xff) return new TextDecoder('utf-16be').decode(bytes)
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes)
  } catch {
    return new TextDecoder('windows-1252').decode(bytes)
  }
}

/** The sign between cells: the one of comma, semicolon and tab that is most often in the first written line, outside quotes. */
function delimiterOf(text: string): string {
  const head = (/[^\r\n]*\S[^\r\n]*/.exec(text)?.[0] ?? '').replace(/"[^"]*"/g, '')
  const count = (sign: string): number => head.split(sign).length - 1
  return DELIMITERS.reduce((best, sign) => (count(sign) > count(best) ? sign : best))
}

/**
 * The records of a delimited text; blank lines are left out. Cells in quotes may hold the delimiter, doubled quotes and line ends.
 * Source: RFC 4180; semicolons and tabs are common practice of spreadsheets, no source.
 *
 * @throws RangeError naming the line where a quote was opened and never closed
 */
export function rosterRecords(given: string): RosterRecord[] {
  const text = given.replace(/^\uFEFF/, '')
  const delimiter = delimiterOf(text)
  const records: RosterRecord[] = []
  let cells: string[] = []
  let cell = ''
  let line = 1
  let startedOn = 1
  let quotedSince: number | null = null

  const endCell = (): void => {
    cells.push(cell.trim())
    cell = ''
  }
  const endRecord = (): void => {
    endCell()
    if (cells.some((one) => one !== '')) records.push({ line: startedOn, cells })
    cells = []
    startedOn = line
  }

  for (let at = 0; at < text.length; at += 1) {
    const sign = text[at] ?? ''
    const lineEnd = sign === '\n' || (sign === '\r' && text[at + 1] !== '\n')
    if (lineEnd) line += 1
    if (quotedSince !== null) {
      if (sign !== QUOTE) cell += sign
      else if (text[at + 1] === QUOTE) {
        cell += QUOTE
        at += 1
      } else quotedSince = null
    } else if (sign === QUOTE && cell.trim() === '') {
      cell = ''
      quotedSince = line
    } else if (sign === delimiter) endCell()
    else if (lineEnd) endRecord()
    else if (sign !== '\r') cell += sign
  }
  if (quotedSince !== null) throw new RangeError(`The quote opened on line ${quotedSince} is never closed. Close it or take it out.`)
  endRecord()
  return records
}

import type { Source } from '../source'

/** Welding positions of ISO 6947 that a welder test can be made in. PH, PJ and the L045 positions are fixed pipe. */
export const ISO_POSITIONS = ['PA', 'PB', 'PC', 'PD', 'PE', 'PF', 'PG', 'PH', 'PJ', 'H-L045', 'J-L045'] as const
export type IsoPosition = (typeof ISO_POSITIONS)[number]

type Row = { readonly covers: readonly IsoPosition[]; readonly source: Source }

const butt = (covers: readonly IsoPosition[]): Row => ({
  covers,
  source: { title: 'Range summary of ISO 9606-1:2013', clause: 'Table 9', status: 'secondary', note: 'A two-page summary, not the standard.' },
})
const fillet = (covers: readonly IsoPosition[], status: Source['status'], note?: string): Row => ({
  covers,
  source: { title: 'ISO 9606-1:2012', clause: 'Table 10', status, ...(note === undefined ? {} : { note }) },
})

/** Butt welds are never made in PB or PD. */
const BUTT: Readonly<Partial<Record<IsoPosition, Row>>> = {
  PA: butt(['PA']),
  PC: butt(['PA', 'PC']),
  PE: butt(['PA', 'PC', 'PE']),
  PF: butt(['PA', 'PF']),
  PG: butt(['PG']),
  PH: butt(['PA', 'PE', 'PF', 'PH']),
  PJ: butt(['PA', 'PE', 'PG', 'PJ']),
  'H-L045': butt(['PA', 'PC', 'PE', 'PF', 'PH', 'H-L045']),
  'J-L045': butt(['PA', 'PC', 'PE', 'PG', 'PJ', 'J-L045']),
}

const FILLET: Readonly<Partial<Record<IsoPosition, Row>>> = {
  PA: fillet(['PA'], 'secondary'),
  PB: fillet(['PA', 'PB'], 'secondary'),
  PC: fillet(['PA', 'PB', 'PC'], 'memory'),
  PD: fillet(['PA', 'PB', 'PC', 'PD', 'PE'], 'memory'),
  PE: fillet(['PA', 'PB', 'PC', 'PD', 'PE'], 'memory', 'Recalled with less certainty than the rows above it.'),
  PF: fillet(['PA', 'PB', 'PF'], 'memory'),
  PG: fillet(['PG'], 'memory'),
  PH: fillet(['PA', 'PB', 'PC', 'PD', 'PE', 'PF', 'PH'], 'memory', 'Recalled with less certainty.'),
  PJ: fillet(['PA', 'PB', 'PC', 'PD', 'PE', 'PG', 'PJ'], 'memory', 'Recalled with little certainty: read the standard.'),
}

/** Two pipe tests that together stand for the inclined fixed pipe. Same summary as the butt table. */
const TOGETHER: readonly { readonly tests: readonly [IsoPosition, IsoPosition]; readonly add: IsoPosition }[] = [
  { tests: ['PC', 'PH'], add: 'H-L045' },
  { tests: ['PC', 'PJ'], add: 'J-L045' },
]

export type IsoWeld = 'butt' | 'fillet'
export type IsoCoverage = { readonly positions: readonly IsoPosition[]; readonly sources: readonly Source[] }

/**
 * Positions that passed tests to ISO 9606-1 cover, with the source of every row used. A butt test covers no fillets here:
 * since 2012 that takes a fillet test of its own.
 *
 * @param test one test position ('PF') or several joined with '+' ('PC+PH')
 * @param options.pipe all the tests were made on pipe, which lets PC with PH, or PC with PJ, stand for the inclined pipe
 * @throws RangeError for a position that is not in ISO 6947 or that the weld type is never tested in
 */
export function isoPositionsQualified(test: string, weld: IsoWeld, options: { readonly pipe?: boolean } = {}): IsoCoverage {
  const tests = test.split('+').map(readIsoPosition)
  const table = weld === 'butt' ? BUTT : FILLET
  const rows = tests.map(position => {
    const row = table[position]
    if (row === undefined) throw new RangeError(`A ${weld} weld test in ${position} is not in the table; it lists ${Object.keys(table).join(', ')}.`)
    return row
  })
  const joined = weld === 'butt' && options.pipe === true ? TOGETHER.filter(pair => pair.tests.every(one => tests.includes(one))) : []
  const covered = new Set([...rows.flatMap(row => row.covers), ...joined.map(pair => pair.add)])
  return { positions: ISO_POSITIONS.filter(position => covered.has(position)), sources: distinct(rows.map(row => row.source)) }
}

const distinct = (sources: readonly Source[]): Source[] =>
  sources.filter((one, i) => sources.findIndex(other => JSON.stringify(other) === JSON.stringify(one)) === i)

/** Reads 'pf', 'H-L045'. @throws RangeError for anything else. */
export function readIsoPosition(text: string): IsoPosition {
  const name = text.trim().toUpperCase()
  const position = ISO_POSITIONS.find(known => known === name)
  if (position === undefined) throw new RangeError(`"${text.trim()}" is not a welding position of ISO 6947; it lists ${ISO_POSITIONS.join(', ')}.`)
  return position
}

export const POSITION_NAMES_SOURCE: Source = {
  title: 'Welding position sheet after BS 499, ISO 6947 and ASME IX',
  clause: null,
  status: 'secondary',
}

/**
 * The ISO 6947 name of an AWS plate test position. 4F is PD; tables that call it PE are wrong. A vertical weld needs its progression.
 *
 * @throws RangeError for an unknown position, or a vertical one without a progression
 */
export function isoPositionOf(position: string, progression: 'up' | 'down' | null): IsoPosition {
  const name = position.trim().toUpperCase()
  if (name === '3G' || name === '3F') {
    if (progression === null) throw new RangeError(`${name} is PF or PG depending on the progression; say whether it was welded up or down.`)
    return progression === 'up' ? 'PF' : 'PG'
  }
  const fixed = FIXED[name]
  if (fixed === undefined) throw new RangeError(`"${position.trim()}" is not a plate test position; use 1G to 4G or 1F to 4F.`)
  return fixed
}

const FIXED: Readonly<Record<string, IsoPosition>> = { '1G': 'PA', '1F': 'PA', '2F': 'PB', '2G': 'PC', '4F': 'PD', '4G': 'PE' }

import type { Source } from '../source'

/** The positions a filler metal is classified for: flat, horizontal, vertical welded upward or downward, overhead. */
export const WELDING_POSITIONS = ['F', 'H', 'V-up', 'V-down', 'OH'] as const
export type WeldingPosition = (typeof WELDING_POSITIONS)[number]

export type Progression = 'up' | 'down' | null

/** One row of the table: a test position as AWS names it, its ISO 6947 code, and what is welded in it. */
export type PositionRow = {
  readonly aws: string
  /** null where ISO 6947 has no code for it. */
  readonly iso: string | null
  readonly progression: Progression
  readonly product: 'plate' | 'pipe'
  readonly welds: readonly WeldingPosition[]
  readonly source: Source
}

const CHART: Source = { title: 'AWS A3.0 and ISO 6947, welding positions', clause: null, status: 'secondary', note: 'Read in a BS 499 position chart.' }
const RECALLED: Source = { ...CHART, status: 'memory', note: 'The row is from memory.' }

const row = (aws: string, iso: string | null, welds: readonly WeldingPosition[], progression: Progression = null, product: 'plate' | 'pipe' = 'plate', source = CHART): PositionRow =>
  ({ aws, iso, progression, product, welds, source })

/** The one table of positions. 4F is PD: charts that print PE for it are wrong. */
export const POSITION_TABLE: readonly PositionRow[] = [
  row('1G', 'PA', ['F']),
  row('1F', 'PA', ['F']),
  row('2G', 'PC', ['H']),
  row('2F', 'PB', ['H']),
  row('3G', 'PF', ['V-up'], 'up'),
  row('3G', 'PG', ['V-down'], 'down'),
  row('3F', 'PF', ['V-up'], 'up'),
  row('3F', 'PG', ['V-down'], 'down'),
  row('4G', 'PE', ['OH']),
  row('4F', 'PD', ['OH']),
  row('2G', 'PC', ['H'], null, 'pipe', RECALLED),
  row('5G', 'PH', ['F', 'V-up', 'OH'], 'up', 'pipe'),
  row('5G', 'PJ', ['F', 'V-down', 'OH'], 'down', 'pipe'),
  row('5F', 'PH', ['F', 'V-up', 'OH'], 'up', 'pipe'),
  row('5F', 'PJ', ['F', 'V-down', 'OH'], 'down', 'pipe'),
  row('6G', 'H-L045', ['F', 'H', 'V-up', 'OH'], 'up', 'pipe'),
  row('6G', 'J-L045', ['F', 'H', 'V-down', 'OH'], 'down', 'pipe'),
  row('6GR', null, ['F', 'H', 'V-up', 'OH'], 'up', 'pipe', RECALLED),
]

/**
 * Rows of a test position. A vertical position without its progression gives both.
 *
 * @throws RangeError for a position the table does not hold, or a vertical progression on a position that has none
 */
export function positionRows(aws: string, progression: Progression = null): PositionRow[] {
  const name = aws.trim().toUpperCase()
  const known = POSITION_TABLE.filter((each) => each.aws === name)
  if (known.length === 0) throw new RangeError(`"${aws}" is not a welding position: use 1G to 6G or 1F to 5F.`)
  return progression === null || known.every((each) => each.progression === null) ? known : known.filter((each) => each.progression === progression)
}

/**
 * The ISO 6947 code of a test position: '3F' welded up is 'PF'. null where ISO has none (6GR).
 *
 * @throws RangeError for an unknown position, or a vertical one whose progression is not given: up and down have codes of their own
 */
export function isoPosition(aws: string, progression: Progression): string | null {
  const codes = new Set(positionRows(aws, progression).map((each) => each.iso))
  if (codes.size !== 1) throw new RangeError(`${aws} has one ISO code welded up and another welded down: say which.`)
  return [...codes][0] ?? null
}

/**
 * The AWS rows that share an ISO 6947 code: 'PA' is 1G and 1F.
 *
 * @throws RangeError for an unknown code
 */
export function awsPositions(iso: string): PositionRow[] {
  const code = iso.trim().toUpperCase()
  const rows = POSITION_TABLE.filter((each) => each.iso === code)
  if (rows.length === 0) throw new RangeError(`"${iso}" is not an ISO 6947 position these tables know: use PA to PJ, H-L045 or J-L045.`)
  return rows
}

/** Test positions on plate are held within these tolerances (ISO 6947), in degrees. */
export const POSITION_TOLERANCE_DEG = { slope: 5, rotation: 10 } as const

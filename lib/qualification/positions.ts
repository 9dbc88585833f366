import type { Source } from '../source'

/** Production positions as the structural code groups them: flat, horizontal, vertical, overhead. */
export const PLATE_POSITIONS = ['F', 'H', 'V', 'OH'] as const
export type PlatePosition = (typeof PLATE_POSITIONS)[number]

export const PLATE_TESTS = ['1G', '2G', '3G', '4G', '1F', '2F', '3F', '4F'] as const
export type PlateTest = (typeof PLATE_TESTS)[number]

export type PositionsQualified = { readonly groove: PlatePosition[]; readonly fillet: PlatePosition[] }

/** Table 6.10 of the 2020 edition, read in a stored copy of its text. */
export const POSITIONS_SOURCE: Source = {
  title: 'AWS D1.1/D1.1M:2020',
  clause: 'Table 6.10',
  status: 'confirmed',
  note: 'Plate tests. Pipe is covered only at 24 in (600 mm) diameter and over, with backing, back-gouging or both.',
}

/** That a vertical test covers only the progression it was welded in is recalled, not read again. */
export const PROGRESSION_SOURCE: Source = {
  title: 'AWS D1.1/D1.1M, essential variables for welder performance qualification',
  clause: null,
  status: 'memory',
}

/**
 * The 4G row is the one people get wrong: overhead groove covers no horizontal groove welds, yet it does cover horizontal fillets.
 */
const COVERED: Readonly<Record<PlateTest, { groove: readonly PlatePosition[]; fillet: readonly PlatePosition[] }>> = {
  '1G': { groove: ['F'], fillet: ['F', 'H'] },
  '2G': { groove: ['F', 'H'], fillet: ['F', 'H'] },
  '3G': { groove: ['F', 'H', 'V'], fillet: ['F', 'H', 'V'] },
  '4G': { groove: ['F', 'OH'], fillet: ['F', 'H', 'OH'] },
  '1F': { groove: [], fillet: ['F'] },
  '2F': { groove: [], fillet: ['F', 'H'] },
  '3F': { groove: [], fillet: ['F', 'H', 'V'] },
  '4F': { groove: [], fillet: ['F', 'H', 'OH'] },
}

/**
 * Production positions that a passed plate test covers, for groove welds (complete and partial penetration alike) and for fillets.
 *
 * @param test one test ('3G') or several passed by the same welder with the same process ('3G+4G'); each adds what it covers
 * @param code the structural steel code; the only one this table is for
 * @throws RangeError for a test the table does not list, such as a pipe test
 */
export function positionsQualified(test: string, code: 'us-structural' = 'us-structural'): PositionsQualified {
  if (code !== 'us-structural') throw new RangeError(`No positions table for the code "${String(code)}"; use 'us-structural'.`)
  const rows = readPlateTests(test).map(name => COVERED[name])
  const covers = (type: 'groove' | 'fillet') => PLATE_POSITIONS.filter(position => rows.some(row => row[type].includes(position)))
  return { groove: covers('groove'), fillet: covers('fillet') }
}

/** Splits '3g + 4G' into the tests it names. @throws RangeError for one the plate table does not list. */
export function readPlateTests(text: string): PlateTest[] {
  if (typeof text !== 'string') throw new RangeError(`A plate test is written like 3G or 3G+4G, not ${String(text)}.`)
  return text.split('+').map(part => {
    const name = part.trim().toUpperCase()
    const test = PLATE_TESTS.find(known => known === name)
    if (test === undefined) throw new RangeError(`"${part.trim()}" is not a plate test in the positions table; it lists ${PLATE_TESTS.join(', ')}.`)
    return test
  })
}

export type PassedPlateTest = {
  readonly test: string
  /** How the vertical test was run; null when the test had no vertical part. */
  readonly progression: 'up' | 'down' | null
}
export type Work = {
  readonly type: 'groove' | 'fillet'
  readonly position: PlatePosition
  readonly progression: 'up' | 'down' | null
}
export type Coverage = { readonly covered: boolean; readonly reasons: readonly CoverageReason[] }
export type CoverageReason = 'position-not-covered' | 'progression-differs' | 'progression-unknown'

/**
 * Whether passed tests let a welder do a piece of work, as far as position and progression decide it.
 * Vertical work needs a vertical test run the same way: up does not cover down, nor down up.
 * A progression nobody wrote down is not guessed at: the work is not covered.
 */
export function coversWork(tests: readonly PassedPlateTest[], work: Work): Coverage {
  const inPosition = tests.filter(passed => positionsQualified(passed.test)[work.type].includes(work.position))
  if (inPosition.length === 0) return { covered: false, reasons: ['position-not-covered'] }
  if (work.position !== 'V') return { covered: true, reasons: [] }
  if (work.progression === null) return { covered: false, reasons: ['progression-unknown'] }
  if (inPosition.some(passed => passed.progression === work.progression)) return { covered: true, reasons: [] }
  return { covered: false, reasons: [inPosition.some(passed => passed.progression === null) ? 'progression-unknown' : 'progression-differs'] }
}

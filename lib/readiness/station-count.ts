import type { Reading, Rule } from '../criteria/types'
import { readingAt } from '../scoring/rules/reading'
import type { Inspection, Station } from '../scoring/types'
import type { StationCount } from './worst-margin'

/** Fewer degrees of freedom than this give no spread worth correcting by. This project's choice: no source. */
const LEAST_FREEDOM = 8

/**
 * What `worstMargin` needs to correct an inspection whose number of stations is not the exercise's.
 *
 * The within-bead spread of each reading is pooled over all the inspections given: the squares about each bead's own mean over
 * their degrees of freedom. A rule on largest less smallest moves at both ends, so it gets twice the spread; a rule whose reading
 * is too rarely repeated is left out and not corrected.
 *
 * @param fixed stations the exercise asks for
 * @param past other inspections of the same student and exercise
 * @returns undefined when the inspection has no stations
 */
export function stationCount(
  fixed: number, inspection: Inspection, past: readonly Inspection[], criteria: { readonly rules: readonly Rule[] },
): StationCount | undefined {
  const used = inspection.stations.length
  if (used === 0) return undefined
  const beads = [inspection, ...past].map(({ stations }) => stations)
  const withinBeadSd: Record<string, number> = {}
  for (const rule of criteria.rules) {
    if (!('reading' in rule)) continue
    const spread = pooledSpread(beads, rule.reading)
    if (spread !== null) withinBeadSd[rule.id] = rule.kind === 'reading-spread' ? 2 * spread : spread
  }
  return { fixed, used, withinBeadSd }
}

function pooledSpread(beads: readonly (readonly Station[])[], reading: Reading): number | null {
  let squares = 0
  let freedom = 0
  for (const stations of beads) {
    const values = stations.map((station) => readingAt(station, reading)).filter((value) => value !== null)
    if (values.length < 2) continue
    const mean = values.reduce((sum, value) => sum + value, 0) / values.length
    squares += values.reduce((sum, value) => sum + (value - mean) ** 2, 0)
    freedom += values.length - 1
  }
  return freedom < LEAST_FREEDOM ? null : Math.sqrt(squares / freedom)
}

import type { Reading } from '../../criteria/types'
import type { NotMeasuredReason } from '../reason'
import type { Finding, Station } from '../types'

function legs(station: Station): readonly [number | null, number | null] {
  return [station.legAMm ?? null, station.legBMm ?? null]
}

/** A reading at a station, or null when what it needs was not measured there. */
export function readingAt(station: Station, reading: Reading): number | null {
  switch (reading) {
    case 'width': return station.widthMm ?? null
    case 'throat': return station.throatMm ?? null
    case 'convexity': return station.convexityMm ?? null
    case 'reinforcement': return station.reinforcementMm ?? null
    case 'penetration': return station.penetrationMm ?? null
    case 'root-concavity': return station.rootConcavityMm ?? null
    case 'misalignment': return station.misalignmentMm ?? null
    case 'underfill': return station.underfillMm ?? null
    case 'shrinkage-groove': return station.shrinkageGrooveMm ?? null
    case 'root-shortfall': return station.rootShortfallMm ?? null
    case 'root-pore': return station.rootPoreMm ?? null
    case 'root-gap': return station.rootGapMm ?? null
    case 'toe-angle': return station.toeAngleDeg ?? null
    case 'shortest-leg': {
      const [a, b] = legs(station)
      return a === null || b === null ? null : Math.min(a, b)
    }
    case 'leg-difference': {
      const [a, b] = legs(station)
      return a === null || b === null ? null : Math.abs(a - b)
    }
  }
}

/** What a reading is in. */
export const unitOfReading = (reading: Reading): Finding['unit'] => (reading === 'toe-angle' ? 'degree' : 'mm')

/** The most a reading that is not whole can still be: one leg read bounds the shortest leg. Infinity when nothing bounds it. */
export function atMost(station: Station, reading: Reading): number {
  if (reading !== 'shortest-leg') return Infinity
  const [a, b] = legs(station)
  return a ?? b ?? Infinity
}

export function reasonWithoutReading(reading: Reading): NotMeasuredReason {
  return reading === 'shortest-leg' || reading === 'leg-difference' ? 'station-without-legs' : `station-without-${reading}`
}

/** True when no station has any of the reading: an optional rule then says nothing. */
export function neverRead(stations: readonly Station[], reading: Reading): boolean {
  return stations.every((station) => readingAt(station, reading) === null && atMost(station, reading) === Infinity)
}

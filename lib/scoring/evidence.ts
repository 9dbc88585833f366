import { factsOf, type Facts } from './facts'
import { INDICATION_KINDS, type Indication, type IndicationKind, type Inspection, type Station, type Weld } from './types'
import { TOLERANCE } from './tolerance'

/** A checked inspection, arranged for judging: stations in order along the weld, indications by kind in order. */
export type Evidence = {
  readonly weld: Facts
  readonly stations: readonly Station[]
  /** One list per kind, in the order of INDICATION_KINDS. */
  readonly seen: readonly (readonly Indication[])[]
  /** Bit `i` is set when kind `i` of INDICATION_KINDS was looked for. */
  readonly lookedFor: number
  readonly cratersFilled: boolean | null
  readonly fusionComplete: boolean | null
  readonly gaugeResolutionMm: number | null
}

const indexOfKind: ReadonlyMap<string, number> = new Map(INDICATION_KINDS.map((kind, index) => [kind, index]))
const NOTHING: readonly Indication[] = []

export const kindIndex = (kind: IndicationKind): number => indexOfKind.get(kind) ?? unknownKind(kind, 'A rule')

function unknownKind(kind: unknown, who: string): never {
  throw new RangeError(`${who} has the kind "${String(kind)}", which is not one of: ${INDICATION_KINDS.join(', ')}.`)
}

const nameOf = (what: 'Station' | 'Indication', index: number, at: unknown, kind?: string): string =>
  `${what} ${index + 1} (${kind === undefined ? '' : `${kind} `}at ${String(at)} mm)`

function refuseSize(what: 'Station' | 'Indication', index: number, at: unknown, size: string, value: unknown, kind?: string): never {
  const problem = typeof value === 'number' && value < 0 ? `a negative ${size}, ${value}` : `a ${size} that is not a number, ${String(value)}`
  throw new RangeError(`${nameOf(what, index, at, kind)} has ${problem}. Leave out what was not measured.`)
}

function refusePlace(what: 'Station' | 'Indication', index: number, at: unknown, weldMm: number, kind?: string): never {
  if (typeof at !== 'number' || !Number.isFinite(at)) {
    throw new RangeError(`${what} ${index + 1}${kind === undefined ? '' : ` (${kind})`} has a place that is not a number: ${String(at)}.`)
  }
  throw new RangeError(`${nameOf(what, index, at, kind)} lies outside the weld, which is ${weldMm} mm long.`)
}

function refuseAngle(index: number, at: unknown, value: unknown): never {
  throw new RangeError(`${nameOf('Station', index, at)} has a toe angle of ${String(value)}, which is not a number of degrees from 0 to 180. Leave out what was not measured.`)
}

const isSize = (value: number | null | undefined): boolean =>
  value === undefined || value === null || (typeof value === 'number' && value >= 0 && value < Infinity)
const isToeAngle = (value: number | null | undefined): boolean => isSize(value) && (value ?? 0) <= 180
const isPlace = (at: number, weldMm: number): boolean => typeof at === 'number' && at >= 0 && at <= weldMm + TOLERANCE

const STATION_SIZES = [
  ['widthMm', 'width'], ['legAMm', 'leg A'], ['legBMm', 'leg B'], ['throatMm', 'throat'], ['convexityMm', 'convexity'],
  ['reinforcementMm', 'reinforcement'], ['penetrationMm', 'penetration'], ['rootConcavityMm', 'root concavity'],
  ['misalignmentMm', 'misalignment'], ['underfillMm', 'underfill'], ['rootWidthMm', 'root width'], ['shrinkageGrooveMm', 'shrinkage groove'],
  ['rootShortfallMm', 'root shortfall'], ['rootPoreMm', 'root pore'], ['rootGapMm', 'root gap'],
] as const
const INDICATION_SIZES = [['lengthMm', 'length'], ['depthMm', 'depth'], ['diameterMm', 'diameter'], ['heightMm', 'height']] as const

/** True when every size of the station is usable. Spelled out: this runs for every reading of every inspection. */
function stationIsSound(s: Station): boolean {
  return isSize(s.widthMm) && isSize(s.legAMm) && isSize(s.legBMm) && isSize(s.throatMm) && isSize(s.convexityMm)
    && isSize(s.reinforcementMm) && isSize(s.penetrationMm) && isSize(s.rootConcavityMm) && isSize(s.misalignmentMm) && isSize(s.underfillMm)
    && isSize(s.rootWidthMm) && isSize(s.shrinkageGrooveMm) && isSize(s.rootShortfallMm) && isSize(s.rootPoreMm) && isSize(s.rootGapMm)
}
const indicationIsSound = (i: Indication): boolean =>
  isSize(i.lengthMm) && isSize(i.depthMm) && isSize(i.diameterMm) && isSize(i.heightMm)

function stationsInOrder(stations: readonly Station[], weldMm: number): readonly Station[] {
  let before = 0
  let inOrder = true
  for (let index = 0; index < stations.length; index++) {
    const station = stations[index] as Station
    if (typeof station !== 'object' || station === null) throw new RangeError(`Station ${index + 1} is empty: give its place along the weld.`)
    const at = station.atMm
    if (!isPlace(at, weldMm)) refusePlace('Station', index, at, weldMm)
    if (!stationIsSound(station)) {
      for (const [field, size] of STATION_SIZES) if (!isSize(station[field])) refuseSize('Station', index, at, size, station[field])
    }
    if (!isToeAngle(station.toeAngleDeg)) refuseAngle(index, at, station.toeAngleDeg)
    if (at < before) inOrder = false
    before = at
  }
  return inOrder ? stations : [...stations].sort((a, b) => a.atMm - b.atMm)
}

/** The same order whatever order they came in: sums over them are then equal to the last bit. */
function compareIndications(a: Indication, b: Indication): number {
  return a.atMm - b.atMm || (a.lengthMm ?? -1) - (b.lengthMm ?? -1) || (a.depthMm ?? -1) - (b.depthMm ?? -1)
    || (a.diameterMm ?? -1) - (b.diameterMm ?? -1) || (a.heightMm ?? -1) - (b.heightMm ?? -1)
    || (a.toe ?? '').localeCompare(b.toe ?? '')
}

function indicationsByKind(indications: readonly Indication[], weldMm: number): readonly (readonly Indication[])[] {
  const byKind: Indication[][] = []
  for (let index = 0; index < indications.length; index++) {
    const indication = indications[index] as Indication
    if (typeof indication !== 'object' || indication === null) throw new RangeError(`Indication ${index + 1} is empty: give its kind and place.`)
    const { kind, atMm: at, toe } = indication
    const slot = indexOfKind.get(kind) ?? unknownKind(kind, `Indication ${index + 1}`)
    if (!isPlace(at, weldMm)) refusePlace('Indication', index, at, weldMm, kind)
    if (!indicationIsSound(indication)) {
      for (const [field, size] of INDICATION_SIZES) if (!isSize(indication[field])) refuseSize('Indication', index, at, size, indication[field], kind)
    }
    if (toe !== undefined && toe !== null && toe !== 'A' && toe !== 'B') {
      throw new RangeError(`${nameOf('Indication', index, at, kind)} names the toe "${String(toe)}"; a weld has toe A and toe B.`)
    }
    const list = byKind[slot]
    if (list === undefined) byKind[slot] = [indication]
    else list.push(indication)
  }
  for (const list of byKind) if (list !== undefined && list.length > 1) list.sort(compareIndications)
  return byKind
}

/** The indications of a kind, in order along the weld. */
export const seenOf = (evidence: Evidence, kind: number): readonly Indication[] => evidence.seen[kind] ?? NOTHING

function answer(value: boolean | null | undefined, question: string): boolean | null {
  if (value === true || value === false) return value
  if (value === null || value === undefined) return null
  throw new RangeError(`${question} is answered true, false or null (not looked at), not "${String(value)}".`)
}

/**
 * Checks an inspection and arranges it for judging.
 *
 * @throws RangeError naming the station or indication that lies outside the weld, is negative, or is not a number
 */
export function evidenceOf(weld: Weld, inspection: Inspection): Evidence {
  const facts = factsOf(weld)
  if (typeof inspection !== 'object' || inspection === null || !Array.isArray(inspection.stations) || !Array.isArray(inspection.indications) || !Array.isArray(inspection.lookedFor)) {
    throw new RangeError('An inspection has lists of stations, of indications and of what was looked for; an empty list when there is nothing.')
  }
  let lookedFor = 0
  for (const kind of inspection.lookedFor) lookedFor |= 1 << (indexOfKind.get(kind) ?? unknownKind(kind, 'The list of what was looked for'))
  const resolution = inspection.gaugeResolutionMm
  if (!isSize(resolution)) throw new RangeError(`The gauge's resolution must be a number of millimetres from 0 up, not ${String(resolution)}.`)
  return {
    weld: facts,
    stations: stationsInOrder(inspection.stations, facts.lengthMm),
    seen: indicationsByKind(inspection.indications, facts.lengthMm),
    lookedFor,
    cratersFilled: answer(inspection.cratersFilled, 'Whether the craters are filled'),
    fusionComplete: answer(inspection.fusionComplete, 'Whether fusion is complete'),
    gaugeResolutionMm: resolution ?? null,
  }
}

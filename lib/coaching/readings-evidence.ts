import type { Finding, Indication, Inspection, Scorecard, Station, Weld } from '../scoring/types'
import type { Evidence } from './evidence'
import { toeSide } from './toe-side'

/** When the readings of a bead say something about how it was welded. Our choices, by what a welder would notice. */
export const READING_RULES = {
  /** The last third against the rest: a tenth wider or narrower is seen with the eye. */
  lastThirdShare: 0.1,
  /** Largest less smallest width, over the mean. */
  widthSpreadShare: 0.25,
  /** Difference of the legs over the longer one. */
  legShare: 0.15,
  /** Pores this close to the start belong to the start. */
  startMm: 25,
  /** Faults this close to the end belong to the stop. */
  endMm: 25,
  /** A fault this close to a restart belongs to it. */
  restartMm: 13,
} as const

/** What the stations and indications say, whatever rule it is asked for. */
export function readingsEvidence(weld: Weld, inspection: Inspection, scorecard: Scorecard): Evidence[] {
  return [
    ...beadWidth(scorecard),
    ...widthAlong(weld, inspection),
    ...legs(weld, inspection),
    ...undercutToes(weld, inspection),
    ...pores(weld, inspection),
    ...countOf('slag-seen', inspection, 'slag'),
    ...countOf('spatter-seen', inspection, 'spatter'),
  ]
}

/** Where the finding lies on the bead: at its stop, or at a restart. */
export function placeEvidence(finding: Finding, weld: Weld, inspection: Inspection): Evidence[] {
  const { where } = finding
  if (where === null || finding.verdict !== 'reject') return []
  const restart = inspection.indications.find(one => one.kind === 'poor-restart' && one.atMm >= where.fromMm - READING_RULES.restartMm && one.atMm <= where.toMm + READING_RULES.restartMm)
  const atEnd = where.fromMm >= weld.lengthMm - Math.min(READING_RULES.endMm, weld.lengthMm / 4)
  return [
    ...(restart === undefined ? [] : [{ code: 'at-restart' as const, atMm: restart.atMm }]),
    ...(atEnd ? [{ code: 'at-end' as const, fromMm: where.fromMm }] : []),
  ]
}

function beadWidth(scorecard: Scorecard): Evidence[] {
  return scorecard.findings.flatMap((finding): Evidence[] => {
    const { measured, limit } = finding
    if (finding.rule !== 'width-in-band' || finding.verdict !== 'reject' || measured === null) return []
    if (limit.min !== null && measured < limit.min) return [{ code: 'bead-narrow', widthMm: measured, limitMm: limit.min }]
    return limit.max !== null && measured > limit.max ? [{ code: 'bead-wide', widthMm: measured, limitMm: limit.max }] : []
  })
}

function widthAlong(weld: Weld, inspection: Inspection): Evidence[] {
  const read = inspection.stations.filter((station): station is Station & { widthMm: number } => station.widthMm !== undefined)
  const [before, last] = [read.filter(s => s.atMm < (weld.lengthMm * 2) / 3), read.filter(s => s.atMm >= (weld.lengthMm * 2) / 3)]
  const found: Evidence[] = []
  if (before.length >= 2 && last.length >= 1) {
    const [beforeMm, lastMm] = [mean(before.map(s => s.widthMm)), mean(last.map(s => s.widthMm))]
    if (lastMm < beforeMm * (1 - READING_RULES.lastThirdShare)) found.push({ code: 'narrower-last-third', beforeMm, lastMm })
    if (lastMm > beforeMm * (1 + READING_RULES.lastThirdShare)) found.push({ code: 'wider-last-third', beforeMm, lastMm })
  }
  const widths = read.map(s => s.widthMm)
  if (widths.length >= 3) {
    const [smallestMm, largestMm] = [Math.min(...widths), Math.max(...widths)]
    if (largestMm - smallestMm > mean(widths) * READING_RULES.widthSpreadShare) found.push({ code: 'widths-vary', smallestMm, largestMm })
  }
  return found
}

function legs(weld: Weld, inspection: Inspection): Evidence[] {
  const read = inspection.stations.filter((s): s is Station & { legAMm: number; legBMm: number } => s.legAMm !== undefined && s.legBMm !== undefined)
  if (read.length === 0) return []
  const [a, b] = [mean(read.map(s => s.legAMm)), mean(read.map(s => s.legBMm))]
  const [longMm, shortMm] = [Math.max(a, b), Math.min(a, b)]
  if (longMm - shortMm <= longMm * READING_RULES.legShare) return []
  return [{ code: 'legs-differ', longer: toeSide(weld.position, a > b ? 'A' : 'B'), longMm, shortMm }]
}

/** Says nothing when a toe was not written down for every undercut. */
function undercutToes(weld: Weld, inspection: Inspection): Evidence[] {
  const toes = inspection.indications.filter(one => one.kind === 'undercut' && one.depthMm !== 0).map(one => one.toe)
  const first = toes[0]
  if (first === undefined || toes.includes(undefined)) return []
  return toes.some(toe => toe !== first) ? [{ code: 'undercut-both-toes' }] : [{ code: 'undercut-one-toe', toe: toeSide(weld.position, first) }]
}

function pores(weld: Weld, inspection: Inspection): Evidence[] {
  const places = inspection.indications.filter(one => one.kind === 'pore').map(middleOf).sort((a, b) => a - b)
  const [fromMm, toMm] = [places[0], places.at(-1)]
  if (fromMm === undefined || toMm === undefined) return []
  const withinMm = Math.min(READING_RULES.startMm, weld.lengthMm / 4)
  const count = places.filter(at => at <= withinMm).length
  if (count * 2 > places.length) return [{ code: 'pores-near-start', count, total: places.length, withinMm }]
  return places.length >= 3 && toMm - fromMm > weld.lengthMm / 2 ? [{ code: 'pores-spread', count: places.length, fromMm, toMm }] : []
}

function countOf(code: 'slag-seen' | 'spatter-seen', inspection: Inspection, kind: Indication['kind']): Evidence[] {
  const count = inspection.indications.filter(one => one.kind === kind).length
  return count === 0 ? [] : [{ code, count }]
}

const middleOf = (one: Indication): number => one.atMm + (one.lengthMm ?? 0) / 2
const mean = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0) / values.length

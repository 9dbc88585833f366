import type { Indication, IndicationKind, Station } from '../scoring/types'
import { markShape, type MarkShape } from './bead-marks'
import { checkBeadStrip, type BeadStripInput } from './bead-strip-input'
import { stripWords, type StripWords } from './bead-strip-words'
import { monotoneCurve, type MonotoneCurve } from './monotone-curve'
import { ruler, type RulerTick } from './ruler'

export type { BeadStripInput } from './bead-strip-input'

/** narrow: a phone, text at its real size. wide: a desk or a page. row: one line of a column, without text. */
export type StripSize = 'narrow' | 'wide' | 'row'

/** A measured width, drawn as a point on each toe. */
export type WidthReading = {
  readonly atMm: number
  readonly x: number
  readonly yA: number
  readonly yB: number
  /** null when the criteria set no band. */
  readonly inBand: boolean | null
  /** The reading in the reader's units; null where it would run into its neighbour. */
  readonly label: string | null
}

export type PlacedMark = MarkShape & { readonly kind: IndicationKind; readonly x: number; readonly y: number }

/** The strip as SVG-ready coordinates: x along the weld, toe A above toe B. */
export type BeadStrip = {
  readonly width: number
  readonly height: number
  readonly left: number
  readonly right: number
  readonly axisY: number
  /** Half a usual width as drawn: how far from the axis a toe is looked for. */
  readonly toeReach: number
  readonly pxPerMm: number
  /** How many times larger width is drawn than length. */
  readonly exaggeration: number
  /** The closed shape of the bead between the first and the last measured width. */
  readonly body: string | null
  /** Toe lines. `sure` is false over a station whose width was not measured. */
  readonly toes: readonly { readonly d: string; readonly sure: boolean }[]
  /** The two ribbons each toe may lie in. */
  readonly band: readonly { readonly y: number; readonly height: number }[]
  readonly readings: readonly WidthReading[]
  /** Stations whose width was not measured. */
  readonly gaps: readonly { readonly atMm: number; readonly x: number }[]
  readonly marks: readonly PlacedMark[]
  readonly restarts: readonly { readonly x: number }[]
  readonly rejected: readonly { readonly x1: number; readonly x2: number; readonly y: number; readonly number: number }[]
  readonly rulerY: number
  readonly ruler: readonly RulerTick[]
  /** y of the row of width readings; null in a row. */
  readonly labelY: number | null
  readonly words: StripWords
}

const LAYOUT = {
  narrow: { width: 344, edge: 8, labels: 18, outside: 16, bracket: 20, ruler: 28, labelRoom: 50 },
  wide: { width: 704, edge: 10, labels: 20, outside: 18, bracket: 22, ruler: 30, labelRoom: 60 },
  row: { width: 320, edge: 3, labels: 0, outside: 10, bracket: 0, ruler: 0, labelRoom: Infinity },
} as const

/** Widths are exaggerated until the bead is about a seventh as high as it is long: enough to see a sixty-fourth. */
const SHAPELY = 7
const MOST_EXAGGERATION = 8
/** A bead gone very wide is drawn less exaggerated rather than taller than this share of its length. */
const TALLEST = 0.4
/** With neither a band nor a width to go by. */
const PLAIN_WIDTH_MM = 8
/** Kinds that lie on the plate beside the weld. */
const ON_PLATE: readonly IndicationKind[] = ['arc-strike', 'spatter']

/**
 * Draws the weld along its length. Toe lines run smoothly through the measured widths and through nothing else: they begin at the
 * first measured station, end at the last, never swing past a reading, and are marked unsure over a station that was not measured.
 * Where each toe lay was not measured, only their distance: they are drawn evenly about the middle.
 *
 * @throws RangeError when the weld has no length, a place lies off the weld, a width or band is not a size, or two stations
 * with a width share one place
 */
export function drawBeadStrip(input: BeadStripInput, size: StripSize): BeadStrip {
  checkBeadStrip(input)
  const { weld, inspection, reader } = input
  const layout = LAYOUT[size]
  const left = layout.edge
  const right = layout.width - layout.edge
  const pxPerMm = (right - left) / weld.lengthMm
  const stations = [...inspection.stations].sort((a, b) => a.atMm - b.atMm)
  const measured = stations.filter(hasWidth)
  const band = input.widthBand
  const widest = Math.max(0, ...measured.map((station) => station.widthMm))
  const usual = band?.maxMm ?? band?.minMm ?? (median(measured.map((station) => station.widthMm)) || PLAIN_WIDTH_MM)
  const exaggeration = exaggerationFor(weld.lengthMm, usual, widest)
  const k = pxPerMm * exaggeration

  const half = round((Math.max(widest, usual, band?.maxMm ?? 0) / 2) * k)
  const axisY = layout.labels + layout.outside + half
  const bracketY = axisY + half + layout.outside
  const rows = size === 'row' ? [] : stackRejected(input.rejected ?? [])
  const rulerY = bracketY + (rows.length > 0 ? (Math.max(...rows) + 1) * layout.bracket : 0)
  const x = (mm: number): number => round(left + mm * pxPerMm)
  const halfWidth = measured.length > 0 ? monotoneCurve(measured.map((s) => ({ x: left + s.atMm * pxPerMm, y: (s.widthMm / 2) * k }))) : null
  const toeY = (toe: 'A' | 'B', at: number): number => axisY + (toe === 'A' ? -1 : 1) * (halfWidth?.at(at) ?? (usual / 2) * k)
  const readings = measured.map((station) => ({
    atMm: station.atMm,
    x: x(station.atMm),
    yA: round(axisY - round((station.widthMm / 2) * k)),
    yB: round(axisY + round((station.widthMm / 2) * k)),
    inBand: band && insideBand(station.widthMm, band),
  }))
  const words = stripWords(input, { exaggeration, measured, readings, unmeasured: stations.filter((station) => !hasWidth(station)) })

  return {
    width: layout.width,
    height: Math.ceil(rulerY + layout.ruler),
    left,
    right,
    axisY,
    toeReach: round((usual / 2) * k),
    pxPerMm,
    exaggeration,
    ...toeLines(stations, measured, axisY, halfWidth),
    band: band ? ribbons(band, axisY, half, k) : [],
    readings: labelled(readings, words.widthLabels, layout.labelRoom),
    gaps: stations.filter((station) => !hasWidth(station)).map((station) => ({ atMm: station.atMm, x: x(station.atMm) })),
    marks: inspection.indications.map((indication) => placed(indication, weld.lengthMm, x, toeY, axisY)),
    restarts: (input.restartsMm ?? []).map((at) => ({ x: x(at) })),
    rejected: rows.map((row, i) => ({
      x1: x(input.rejected?.[i]?.fromMm ?? 0),
      x2: x(input.rejected?.[i]?.toMm ?? 0),
      y: bracketY + row * layout.bracket + layout.bracket / 2,
      number: i + 1,
    })),
    rulerY,
    ruler: size === 'row' ? [] : ruler({ lengthMm: weld.lengthMm, units: reader.units, left, right, labelRoom: layout.labelRoom }),
    labelY: size === 'row' ? null : layout.labels - 5,
    words,
  }
}

type Measured = Station & { readonly widthMm: number }
const hasWidth = (station: Station): station is Measured => station.widthMm !== undefined

function exaggerationFor(lengthMm: number, usualMm: number, widestMm: number): number {
  const shapely = Math.round(lengthMm / (SHAPELY * usualMm))
  const bearable = widestMm > 0 ? Math.floor((lengthMm * TALLEST) / widestMm) : MOST_EXAGGERATION
  return Math.max(1, Math.min(shapely, bearable, MOST_EXAGGERATION))
}

function insideBand(widthMm: number, { minMm, maxMm }: NonNullable<BeadStripInput['widthBand']>): boolean {
  return widthMm >= (minMm ?? 0) - 1e-6 && widthMm <= (maxMm ?? Infinity) + 1e-6
}

function toeLines(stations: readonly Station[], measured: readonly Measured[], axisY: number, curve: MonotoneCurve | null): Pick<BeadStrip, 'body' | 'toes'> {
  if (!curve || measured.length < 2) return { body: null, toes: [] }
  const last = measured.length - 1
  const sides = [-1, 1] as const
  const mirrored = (d: string, side: -1 | 1): string => d.replace(/,(-?[\d.]+)/g, (_, y: string) => `,${round(axisY + side * Number(y))}`)
  const [upper, lower] = sides.map((side) => mirrored(curve.path(0, last), side))
  const stretches = measured.slice(1).map((station, i) => ({
    from: i,
    to: i + 1,
    sure: !stations.some((other) => !hasWidth(other) && other.atMm > (measured[i]?.atMm ?? 0) && other.atMm < station.atMm),
  }))
  const runs = stretches.reduce<typeof stretches>((all, next) => {
    const open = all.at(-1)
    return open && open.sure === next.sure ? [...all.slice(0, -1), { ...open, to: next.to }] : [...all, next]
  }, [])
  return {
    body: `${upper}L${reversed(lower ?? '')}Z`,
    toes: runs.flatMap(({ from, to, sure }) => sides.map((side) => ({ d: mirrored(curve.path(from, to), side), sure }))),
  }
}

/** The same cubic path walked from its end to its start, without the leading M. */
function reversed(d: string): string {
  const points = [...d.matchAll(/(-?[\d.]+),(-?[\d.]+)/g)].map((match) => match[0]).reverse()
  const [first, ...rest] = points
  const curves = Array.from({ length: rest.length / 3 }, (_, i) => `C${rest.slice(i * 3, i * 3 + 3).join(' ')}`)
  return `${first ?? ''}${curves.join('')}`
}

function ribbons(band: NonNullable<BeadStripInput['widthBand']>, axisY: number, half: number, k: number): { y: number; height: number }[] {
  const inner = ((band.minMm ?? 0) / 2) * k
  const outer = band.maxMm === null ? half + 6 : (band.maxMm / 2) * k
  return [{ y: round(axisY - outer), height: round(outer - inner) }, { y: round(axisY + inner), height: round(outer - inner) }]
}

function placed(indication: Indication, lengthMm: number, x: (mm: number) => number, toeY: (toe: 'A' | 'B', at: number) => number, axisY: number): PlacedMark {
  const { kind, toe } = indication
  const from = x(indication.atMm)
  const to = x(Math.min(indication.atMm + (indication.lengthMm ?? 0), lengthMm))
  const side = toe ?? (ON_PLATE.includes(kind) ? 'A' : null)
  const outward = side === 'A' ? -1 : 1
  const clear = ON_PLATE.includes(kind) ? outward * 9 : 0
  const line = (at: number): number => (side ? toeY(side, at) + clear : axisY)
  const middle = (from + to) / 2
  return { kind, x: round(middle), y: round(line(middle)), ...markShape(kind, { from, to, line, outward }) }
}

/** Labels the readings that have room, those outside the band first. */
function labelled(readings: readonly Omit<WidthReading, 'label'>[], labels: readonly string[], room: number): WidthReading[] {
  const order = readings.map((_, i) => i).sort((a, b) => Number(readings[a]?.inBand ?? true) - Number(readings[b]?.inBand ?? true) || a - b)
  const taken: number[] = []
  for (const i of order) {
    const at = readings[i]?.x ?? 0
    if (taken.every((other) => Math.abs((readings[other]?.x ?? 0) - at) >= room)) taken.push(i)
  }
  return readings.map((reading, i) => ({ ...reading, label: Number.isFinite(room) && taken.includes(i) ? (labels[i] ?? null) : null }))
}

/** The first row in which each stretch is clear of those before it. */
function stackRejected(stretches: NonNullable<BeadStripInput['rejected']>): number[] {
  const ends: { row: number; from: number; to: number }[] = []
  return stretches.map(({ fromMm, toMm }) => {
    let row = 0
    while (ends.some((other) => other.row === row && fromMm <= other.to && toMm >= other.from)) row += 1
    ends.push({ row, from: fromMm, to: toMm })
    return row
  })
}

function median(values: readonly number[]): number | undefined {
  const sorted = [...values].sort((a, b) => a - b)
  return sorted[Math.floor(sorted.length / 2)]
}

const round = (value: number): number => Math.round(value * 100) / 100

import { throatOfLegs } from '../geometry/fillet'
import { drawings } from '../language/drawings'
import { say, type Locale } from '../language/say'
import type { Joint } from '../procedure/exercise'
import type { Station } from '../scoring/types'
import { formatForReader } from '../units/display'
import type { LengthUnit } from '../units/length'
import { toeName } from './toe-name'

export type FilletSectionInput = {
  /** The sizes read at one station. */
  readonly station: Pick<Station, 'legAMm' | 'legBMm' | 'throatMm' | 'convexityMm'>
  readonly position: string
  readonly joint: Joint
  readonly thicknessMm: number
  readonly nominalLegMm: number | null
  readonly reader: { readonly units: LengthUnit; readonly locale: Locale }
}

export type SectionWords = {
  readonly title: string
  readonly scale: string
  /** One sentence for each thing known about the section. */
  readonly sentences: readonly string[]
  readonly description: string
}

type Line = { readonly x1: number; readonly y1: number; readonly x2: number; readonly y2: number }
type Rect = { readonly x: number; readonly y: number; readonly width: number; readonly height: number }

/** A dimension: its line, and its size in the reader's units. */
export type Dimension = Line & { readonly label: string; readonly labelX: number; readonly labelY: number; readonly anchor: 'start' | 'middle' | 'end' }

/** The cross-section as SVG-ready coordinates, both directions to one scale; or what is missing to draw it. */
export type FilletSection =
  | { readonly kind: 'not-measured'; readonly missing: readonly ('legAMm' | 'legBMm')[]; readonly words: SectionWords }
  | {
      readonly kind: 'drawn'
      readonly width: number
      readonly height: number
      readonly plates: readonly Rect[]
      /** The closed shape of the weld, and its two legs as lines. */
      readonly weld: string
      readonly legs: string
      /** The face alone. `measured` is false when its shape is not known and it is drawn flat. */
      readonly face: { readonly d: string; readonly measured: boolean }
      /** The nominal triangle's face; null when the exercise names no size. */
      readonly nominal: string | null
      /** From the root to the face; null when its length was not measured. */
      readonly throat: (Line & { readonly label: string; readonly labelX: number; readonly labelY: number }) | null
      readonly dimensions: readonly Dimension[]
      readonly words: SectionWords
    }

/** Room around the weld for the plates and the dimensions, and the length the largest leg is drawn at. */
const FRAME = { left: 92, top: 30, right: 96, bottom: 54, leg: 150, lowest: 60 } as const
/** Plates run this far past the drawing's edge, so that the cut does not look like an end. */
const BEYOND = 4

/**
 * Draws a fillet in section: the measured legs on the two plates, the face with its convexity or hollow, the throat, and the
 * nominal size. The upright leg is leg A. A hollow is taken from the throat: how far it falls short of the flat triangle's,
 * `a·b / √(a² + b²)`.
 *
 * @throws RangeError when a leg, the nominal leg or the thickness is not above 0, or a throat or convexity is below 0
 */
export function drawFilletSection(input: FilletSectionInput): FilletSection {
  check(input)
  const { legAMm, legBMm } = input.station
  if (legAMm === undefined || legBMm === undefined) {
    const missing = (['legAMm', 'legBMm'] as const).filter((leg) => input.station[leg] === undefined)
    return { kind: 'not-measured', missing, words: wordsOfMissing(input, missing) }
  }
  const bulge = bulgeOf(input.station, legAMm, legBMm)
  const px = FRAME.leg / Math.max(legAMm, legBMm, input.nominalLegMm ?? 0)
  const root = { x: FRAME.left, y: FRAME.top + Math.ceil(Math.max(FRAME.lowest, Math.max(legAMm, input.nominalLegMm ?? 0) * px)) }
  const width = FRAME.left + FRAME.leg + FRAME.right
  const height = root.y + FRAME.bottom
  const toeA = { x: root.x, y: round(root.y - legAMm * px) }
  const toeB = { x: round(root.x + legBMm * px), y: root.y }
  const hypotenuse = Math.hypot(legAMm, legBMm)
  const normal = { x: legAMm / hypotenuse, y: -legBMm / hypotenuse }
  const pull = 2 * (bulge ?? 0) * px
  const face = `M${toeA.x},${toeA.y}Q${round((toeA.x + toeB.x) / 2 + normal.x * pull)},${round((toeA.y + toeB.y) / 2 + normal.y * pull)} ${toeB.x},${toeB.y}`
  const size = (mm: number): string => formatForReader(mm, input.reader.units)
  const nominal = input.nominalLegMm === null ? null : input.nominalLegMm * px

  return {
    kind: 'drawn',
    width,
    height,
    plates: plates(input, px, root, width, height),
    weld: `${face}L${root.x},${root.y}Z`,
    legs: `M${toeA.x},${toeA.y}L${root.x},${root.y}L${toeB.x},${toeB.y}`,
    face: { d: face, measured: bulge !== null },
    nominal: nominal === null ? null : `M${root.x},${round(root.y - nominal)}L${round(root.x + nominal)},${root.y}`,
    throat: throatLine(input, px, root, normal, size),
    dimensions: [
      { x1: root.x - 12, x2: root.x - 12, y1: toeA.y, y2: root.y, label: size(legAMm), labelX: root.x - 20, labelY: round((toeA.y + root.y) / 2) + 5, anchor: 'end' },
      { x1: root.x, x2: toeB.x, y1: root.y + 12, y2: root.y + 12, label: size(legBMm), labelX: round((root.x + toeB.x) / 2), labelY: root.y + 32, anchor: 'middle' },
    ],
    words: wordsOfSection(input, legAMm, legBMm, bulge),
  }
}

/** How far the face stands out from the straight line between the toes, at its middle; below 0 when it is hollow; null when not measured. */
function bulgeOf({ convexityMm, throatMm }: FilletSectionInput['station'], a: number, b: number): number | null {
  if (convexityMm !== undefined && (convexityMm > 0 || throatMm === undefined)) return convexityMm
  if (throatMm === undefined) return null
  // The throat meets the face where the perpendicular from the root does: in the middle only when the legs are equal.
  const share = (a * a) / (a * a + b * b)
  const bulge = (throatMm - throatOfLegs(a, b)) / (4 * share * (1 - share))
  return convexityMm === 0 ? Math.min(0, bulge) : bulge
}

function throatLine({ station: { throatMm } }: FilletSectionInput, px: number, root: { x: number; y: number }, normal: { x: number; y: number }, size: (mm: number) => string) {
  if (throatMm === undefined) return null
  const [x2, y2] = [round(root.x + normal.x * throatMm * px), round(root.y + normal.y * throatMm * px)]
  return { x1: root.x, y1: root.y, x2, y2, label: size(throatMm), labelX: round(x2 + normal.x * 12), labelY: round(y2 + normal.y * 12) }
}

/** A tee: one plate standing on the other. A lap: the edge of one plate lying on the other. Both run off the drawing. */
function plates({ joint, thicknessMm }: FilletSectionInput, px: number, root: { x: number; y: number }, width: number, height: number): Rect[] {
  const thickness = thicknessMm * px
  const lower = { x: -BEYOND, y: root.y, width: width + 2 * BEYOND, height: round(Math.min(thickness, height - root.y + BEYOND)) }
  if (joint === 'lap') {
    const top = round(Math.max(-BEYOND, root.y - thickness))
    return [lower, { x: -BEYOND, y: top, width: root.x + BEYOND, height: round(root.y - top) }]
  }
  const left = round(Math.max(-BEYOND, root.x - thickness))
  return [lower, { x: left, y: -BEYOND, width: round(root.x - left), height: root.y + BEYOND }]
}

function wordsOfSection({ station, nominalLegMm, reader }: FilletSectionInput, a: number, b: number, bulge: number | null): SectionWords {
  const { locale, units } = reader
  const size = (mm: number): string => formatForReader(mm, units)
  const sentences = [
    say(drawings, locale, 'legs', { a: size(a), b: size(b) }),
    nominalLegMm === null ? null : say(drawings, locale, 'nominalLeg', { leg: size(nominalLegMm) }),
    station.throatMm === undefined ? null : say(drawings, locale, 'throat', { throat: size(station.throatMm) }),
    face(),
  ].filter((sentence) => sentence !== null)
  const title = say(drawings, locale, 'sectionTitle')
  const scale = say(drawings, locale, nominalLegMm === null ? 'sectionScaleNoNominal' : 'sectionScale')
  return { title, scale, sentences, description: [`${title}.`, ...sentences].join(' ') }

  function face(): string {
    if (bulge === null) return say(drawings, locale, 'profileNotMeasured')
    if (Math.abs(bulge) < 0.05) return say(drawings, locale, 'flatFace')
    return bulge > 0 ? say(drawings, locale, 'convexity', { height: size(bulge) }) : say(drawings, locale, 'concave', { depth: size(-bulge) })
  }
}

function wordsOfMissing({ position, reader: { locale } }: FilletSectionInput, missing: readonly ('legAMm' | 'legBMm')[]): SectionWords {
  const names = missing.map((leg) => say(drawings, locale, 'legA', { toe: toeName(leg === 'legAMm' ? 'A' : 'B', position, locale) }))
  const sentence = say(drawings, locale, 'sectionNotMeasured', { missing: new Intl.ListFormat(locale, { type: 'conjunction' }).format(names) })
  const title = say(drawings, locale, 'sectionTitle')
  return { title, scale: '', sentences: [sentence], description: `${title}. ${sentence}` }
}

function check({ station, thicknessMm, nominalLegMm }: FilletSectionInput): void {
  const above = { 'leg A': station.legAMm, 'leg B': station.legBMm, 'the nominal leg': nominalLegMm ?? undefined, 'the plate thickness': thicknessMm }
  for (const [name, value] of Object.entries(above)) {
    if (value !== undefined && !(value > 0 && Number.isFinite(value))) throw new RangeError(`A section with ${name} of ${value} mm cannot be drawn.`)
  }
  for (const [name, value] of Object.entries({ throat: station.throatMm, convexity: station.convexityMm })) {
    if (value !== undefined && !(value >= 0 && Number.isFinite(value))) throw new RangeError(`A section with a ${name} of ${value} mm cannot be drawn.`)
  }
}

const round = (value: number): number => Math.round(value * 100) / 100

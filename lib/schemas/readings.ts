import * as z from 'zod'
import { problems } from '../language/problems'
import { say } from '../language/say'
import { INDICATION_KINDS, type Indication, type Inspection, type Station } from '../scoring/types'
import { parseAngle } from '../units/angle'
import { formatForReader } from '../units/display'
import { alongWeld, isPastEnd, lengthField, settingField, type Reader } from './field'

/** More than a class coupon can show; the gauge in the hand stops sooner. */
const MOST_STATIONS = 60
const MOST_INDICATIONS = 200
const MOST_SIZE_MM = 75
const MOST_DEPTH_MM = 25
const MOST_ANGLE = 180
/** Two places closer than this are one place: 2 in and 50.8 mm differ in the last bit. */
const SAME_PLACE_MM = 1e-6

export type ReadingsFrame = Reader & { readonly lengthMm: number; readonly gaugeResolutionMm: number }

/** The boxes of a station, and the field each fills. */
const STATION_FIELDS = {
  width: 'widthMm', legA: 'legAMm', legB: 'legBMm', throat: 'throatMm', convexity: 'convexityMm', reinforcement: 'reinforcementMm',
  penetration: 'penetrationMm', rootConcavity: 'rootConcavityMm', misalignment: 'misalignmentMm', underfill: 'underfillMm',
  rootWidth: 'rootWidthMm', shrinkageGroove: 'shrinkageGrooveMm', rootShortfall: 'rootShortfallMm', rootPore: 'rootPoreMm', rootGap: 'rootGapMm',
  toeAngle: 'toeAngleDeg',
} as const satisfies Record<string, keyof Station>
export type StationBox = keyof typeof STATION_FIELDS
/** Boxes that came later: stored documents, and forms that wait on a device, are without them. */
const LATER: readonly StationBox[] = ['rootWidth', 'shrinkageGroove', 'rootShortfall', 'rootPore', 'rootGap', 'toeAngle']

/** The box of a station's field: 'widthMm' is typed into `width`. */
export function stationBoxOf(field: (typeof STATION_FIELDS)[StationBox]): StationBox {
  const box = STATION_BOXES.find((name) => STATION_FIELDS[name] === field)
  if (box === undefined) throw new RangeError(`"${String(field)}" is not a reading of a station.`)
  return box
}

export const STATION_BOXES = Object.keys(STATION_FIELDS) as readonly StationBox[]
/** Boxes that hold a size of the weld itself; the others hold how far something stands out or falls short. */
const LARGE: readonly StationBox[] = ['width', 'legA', 'legB', 'throat', 'rootWidth']
const indicationBoxes = ['length', 'depth', 'diameter', 'height'] as const

/** Drops what was not measured: an absent key, because null must not be stored as a number's neighbour. */
function measured<K extends string>(values: Readonly<Record<K, number | null>>): Partial<Record<K, number>> {
  return Object.fromEntries(Object.entries(values).filter(([, value]) => value !== null)) as Partial<Record<K, number>>
}

/**
 * The readings of one inspection as typed in a form, turned into the inspection that scoring reads.
 * Output keeps both: `inspection` in millimetres and `typed`, the boxes as they were filled.
 */
export function readingsSchema(frame: ReadingsFrame) {
  const length = formatForReader(frame.lengthMm, frame.units)
  const place = alongWeld(frame, frame.lengthMm)
  const size = lengthField(frame, MOST_SIZE_MM)
  const depth = lengthField(frame, MOST_DEPTH_MM)
  const told = (key: Parameters<typeof say<keyof typeof problems.en>>[2], values: Record<string, string | number> = {}) =>
    say(problems, frame.locale, key, values)

  const atField = place.transform((value, context): number => {
    if (value !== null) return value
    context.addIssue({ code: 'custom', message: told('required') })
    return z.NEVER
  })

  const angle = settingField(frame, { parse: parseAngle, example: '135°', most: MOST_ANGLE, mostText: `${MOST_ANGLE}°` }, 'absurd')
  const boxFor = (name: StationBox) => (name === 'toeAngle' ? angle : LARGE.includes(name) ? size : depth)
  const boxesOf = Object.fromEntries(STATION_BOXES.map((name) => [name, LATER.includes(name) ? boxFor(name).prefault('') : boxFor(name)])) as Record<StationBox, typeof size>
  const station = z.strictObject({ at: atField, ...boxesOf }).transform(({ at, ...row }): Station => ({
    atMm: at,
    ...measured(Object.fromEntries(STATION_BOXES.map((name) => [STATION_FIELDS[name], row[name] ?? null])) as Record<(typeof STATION_FIELDS)[StationBox], number | null>),
  }))

  const indication = z.strictObject({
    kind: z.enum(INDICATION_KINDS, { error: () => told('choose') }),
    at: atField, length: lengthField(frame, Infinity), depth, diameter: depth, height: depth,
    toe: z.enum(['A', 'B']).nullable(),
  }).transform((row, context): Indication => {
    let lengthMm = row.length
    if (lengthMm !== null && isPastEnd(row.at + lengthMm, frame.lengthMm)) {
      context.addIssue({ code: 'custom', path: ['length'], message: told('runsOff', { from: formatForReader(row.at, frame.units), length }) })
    }
    if (lengthMm !== null) lengthMm = Math.min(lengthMm, frame.lengthMm - row.at)
    return {
      kind: row.kind, atMm: row.at,
      ...measured({ lengthMm, depthMm: row.depth, diameterMm: row.diameter, heightMm: row.height }),
      ...(row.toe && { toe: row.toe }),
    }
  })

  const boxes = z.strictObject({
    stations: z.array(z.unknown()).max(MOST_STATIONS, told('tooMany', { most: MOST_STATIONS })).pipe(z.array(station)),
    indications: z.array(z.unknown()).max(MOST_INDICATIONS, told('tooMany', { most: MOST_INDICATIONS })).pipe(z.array(indication)),
    lookedFor: z.array(z.enum(INDICATION_KINDS)).transform((kinds) => [...new Set(kinds)]),
    cratersFilled: z.boolean().nullable(),
    fusionComplete: z.boolean().nullable(),
  }).superRefine((value, context) => {
    value.stations.forEach((row, index) => {
      if (!value.stations.slice(0, index).some((before) => Math.abs(before.atMm - row.atMm) < SAME_PLACE_MM)) return
      context.addIssue({ code: 'custom', path: ['stations', index, 'at'], message: told('twoStationsAtOnce', { typed: formatForReader(row.atMm, frame.units) }) })
    })
  })

  return z.unknown().transform((raw, context): StoredReadings => {
    const parsed = boxes.safeParse(raw)
    if (!parsed.success) {
      for (const issue of parsed.error.issues) context.addIssue({ code: 'custom', path: issue.path, message: issue.message })
      return z.NEVER
    }
    const inspection: Inspection = { ...parsed.data, gaugeResolutionMm: frame.gaugeResolutionMm }
    return { version: 1, units: frame.units, inspection, typed: typedReadings.parse(raw) }
  })
}

const box = z.string().max(200)
const typedStation = z.object({ at: box, ...Object.fromEntries(STATION_BOXES.map((name) => [name, LATER.includes(name) ? box.default('') : box])) } as Record<'at' | StationBox, typeof box>)
const typedIndication = z.object({
  kind: z.enum(INDICATION_KINDS), toe: z.enum(['A', 'B']).nullable(), at: box,
  ...(Object.fromEntries(indicationBoxes.map((name) => [name, box])) as Record<(typeof indicationBoxes)[number], typeof box>),
})
const typedReadings = z.object({ stations: z.array(typedStation), indications: z.array(typedIndication) })

/** The boxes of a form, exactly as filled. */
export type TypedReadings = z.output<typeof typedReadings>
export type TypedStation = z.output<typeof typedStation>
export type TypedIndication = z.output<typeof typedIndication>

const size = z.number().nonnegative().finite()
const storedInspection = z.object({
  stations: z.array(z.object({
    atMm: size, ...(Object.fromEntries(Object.values(STATION_FIELDS).map((field) => [field, size.optional()])) as Record<(typeof STATION_FIELDS)[StationBox], z.ZodOptional<typeof size>>),
  })),
  indications: z.array(z.object({
    kind: z.enum(INDICATION_KINDS), atMm: size, lengthMm: size.optional(), depthMm: size.optional(),
    diameterMm: size.optional(), heightMm: size.optional(), toe: z.enum(['A', 'B']).optional(),
  })),
  lookedFor: z.array(z.enum(INDICATION_KINDS)),
  cratersFilled: z.boolean().nullable(),
  fusionComplete: z.boolean().nullable(),
  gaugeResolutionMm: size.optional(),
})

/** An inspection's document in the database: what was judged, and what was typed. */
export type StoredReadings = {
  readonly version: 1
  readonly units: 'in' | 'mm'
  readonly inspection: Inspection
  readonly typed: TypedReadings
}

const stored = z.object({ version: z.literal(1), units: z.enum(['in', 'mm']), inspection: storedInspection, typed: typedReadings })

/** Reads a stored document back. @throws when the document is not one this version wrote */
export function readStoredReadings(document: unknown): StoredReadings {
  return stored.parse(document) as StoredReadings
}

/** A station with nothing measured. */
export const blankStation = (at: string): TypedStation => ({ at, ...(Object.fromEntries(STATION_BOXES.map((name) => [name, ''])) as Record<StationBox, string>) })

/** An empty form: so many stations at their places, nothing measured, nothing looked for. */
export function blankReadings(places: readonly string[]) {
  return {
    stations: places.map(blankStation),
    indications: [] as TypedIndication[],
    lookedFor: [] as (typeof INDICATION_KINDS)[number][],
    cratersFilled: null as boolean | null,
    fusionComplete: null as boolean | null,
  }
}
/** What a form sends as `readings`. */
export type ReadingsForm = ReturnType<typeof blankReadings>

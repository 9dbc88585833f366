import * as z from 'zod'
import { photoGauge, photoProblemWords } from '../language/photo-gauge'
import { say, type Locale } from '../language/say'
import { measurePhoto, type PhotoMeasurement } from '../measure/photo-measurement'
import { PhotoProblem } from '../measure/photo-problem'
import type { Mark, PhotoMarks } from '../measure/photo-marks'

/** As many as a form has stations. */
const MOST_PAIRS = 60
/** Larger than any photo that is kept. */
const MOST_SIDE_PX = 20_000

const side = z.number().int().min(3).max(MOST_SIDE_PX)
const finite = z.number().min(-MOST_SIDE_PX).max(MOST_SIDE_PX)
const point = z.strictObject({ x: finite, y: finite })
const mark = z.strictObject({ tap: point, snapped: point.nullable(), sdPx: z.number().min(0).max(1000) })
const size = z.number().finite()
const sizeSd = z.number().min(0).max(100)
const marksShape = z.strictObject({
  picture: z.strictObject({ widthPx: side, heightPx: side }),
  scale: z.discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('two-points'), marks: z.tuple([mark, mark]), distanceMm: size, sizeSdMm: sizeSd }),
    z.strictObject({ kind: z.literal('rectangle'), marks: z.tuple([mark, mark, mark, mark]), sidesMm: z.tuple([size, size]), sizeSdMm: sizeSd }),
  ]),
  ends: z.tuple([mark, mark]),
  pairs: z.array(z.strictObject({ a: mark, b: mark })).min(1).max(MOST_PAIRS),
})

/**
 * The marks of a photo as a device sends them, measured: widths are never taken from outside. Marks that cannot be measured get the
 * sentence that says what to do.
 */
export function measurementSchema(locale: Locale) {
  return z.unknown().transform((raw, context): PhotoMeasurement => {
    const parsed = marksShape.safeParse(raw)
    const refuse = (message: string): never => {
      context.addIssue({ code: 'custom', message })
      return z.NEVER
    }
    if (!parsed.success || !allInside(parsed.data)) return refuse(say(photoGauge, locale, 'tooMuch'))
    try {
      return measurePhoto(parsed.data)
    } catch (problem) {
      if (problem instanceof PhotoProblem) return refuse(say(photoProblemWords, locale, problem.reason))
      throw problem
    }
  })
}

function allInside({ picture, scale, ends, pairs }: PhotoMarks): boolean {
  const inside = ({ tap, snapped }: Mark): boolean => [tap, snapped ?? tap].every(({ x, y }) => x >= -1 && y >= -1 && x <= picture.widthPx && y <= picture.heightPx)
  return [...scale.marks, ...ends, ...pairs.flatMap(({ a, b }) => [a, b])].every(inside)
}

const measured = z.number().finite()
const stored = z.strictObject({
  version: z.literal(1),
  geometry: z.string().min(1).max(100),
  marks: marksShape,
  widths: z.array(z.strictObject({
    pair: z.number().int().nonnegative(), atMm: measured, atSdMm: measured.nonnegative(), widthMm: measured.nonnegative(), widthSdMm: measured.nonnegative(), skewMm: measured.nonnegative(),
  })).max(MOST_PAIRS),
  length: z.strictObject({ mm: measured.nonnegative(), sdMm: measured.nonnegative() }),
})

/** Reads a stored measurement back. @throws when the document is not one this application wrote */
export function readStoredMeasurement(document: unknown): PhotoMeasurement {
  return stored.parse(document)
}

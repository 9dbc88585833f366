import { beadWidths, type WidthReading } from './bead-widths'
import { pickedBead, type PhotoMarks } from './photo-marks'

/** The geometry that turns marks into widths; raised when the same marks would give other numbers. */
export const GEOMETRY_VERSION = 'photo-geometry 1'

/** A photo's marks and what they measure: the document kept with the photo. */
export type PhotoMeasurement = {
  readonly version: 1
  readonly geometry: string
  readonly marks: PhotoMarks
  /** One reading per marked pair, in the order of the pairs; each `sd` is one standard deviation, mm. */
  readonly widths: readonly WidthReading[]
  /** Start to end of the weld as marked. */
  readonly length: { readonly mm: number; readonly sdMm: number }
}

/**
 * What the marks measure.
 *
 * @throws PhotoProblem when the scale, the ends or the pairs cannot carry a measurement
 */
export function measurePhoto(marks: PhotoMarks): PhotoMeasurement {
  const { readings, axisLength } = beadWidths(pickedBead(marks))
  return { version: 1, geometry: GEOMETRY_VERSION, marks, widths: readings, length: axisLength ?? { mm: 0, sdMm: 0 } }
}

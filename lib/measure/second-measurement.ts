import type { BeadStripInput } from '../reports/bead-strip-input'
import type { PhotoTask } from './widths-into-form'

/** Measuring on a photo of a look that was submitted: what is measured for, and the widths read then, by row; null was not measured. */
export type SecondMeasurement = { readonly task: PhotoTask; readonly submittedMm: readonly (number | null)[] }

/** Its stations where they were, against the same band. null where it has no station to measure at. */
export function secondMeasurement({ weld, inspection: { stations }, widthBand, reader }: Pick<BeadStripInput, 'weld' | 'inspection' | 'widthBand' | 'reader'>): SecondMeasurement | null {
  if (stations.length === 0) return null
  return {
    task: {
      units: reader.units, weldLengthMm: weld.lengthMm, band: widthBand,
      places: stations.map(({ atMm }, row) => ({ row, atMm })).sort((a, b) => a.atMm - b.atMm),
    },
    submittedMm: stations.map(({ widthMm }) => widthMm ?? null),
  }
}

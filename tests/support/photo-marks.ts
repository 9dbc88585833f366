// Marks on a made-up picture of 1000 × 600 pixels at 4 pixels to the millimetre, straight from above: a bead 200 mm long.
import type { Mark, PhotoMarks } from '@/lib/measure/photo-marks'

const PX_PER_MM = 4
export const mark = (x: number, y: number, sdPx = 1): Mark => ({ tap: { x, y }, snapped: null, sdPx })

/** Marks of pairs at places along the bead, each with its width. */
export function marksOf(pairs: readonly { readonly atMm: number; readonly widthMm: number }[]): PhotoMarks {
  return {
    picture: { widthPx: 1000, heightPx: 600 },
    scale: { kind: 'two-points', marks: [mark(100, 500), mark(500, 500)], distanceMm: 400 / PX_PER_MM, sizeSdMm: 0 },
    ends: [mark(100, 300), mark(900, 300)],
    pairs: pairs.map(({ atMm, widthMm }) => ({
      a: mark(100 + atMm * PX_PER_MM, 300 - (widthMm * PX_PER_MM) / 2), b: mark(100 + atMm * PX_PER_MM, 300 + (widthMm * PX_PER_MM) / 2),
    })),
  }
}

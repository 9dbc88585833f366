/** Things of a standard size that lie about, to give a photo its scale. Sides in mm, with one standard deviation of each. */
export const KNOWN_OBJECTS = {
  /** A bank or identity card: ISO/IEC 7810, ID-1, 85.60 × 53.98 mm; its tolerances of about a tenth of a millimetre from memory. */
  card: { sidesMm: [85.6, 53.98], sizeSdMm: 0.1 },
  /** Paper of size A6: ISO 216, 148 × 105 mm; cut to ± 1.5 mm (from memory), so half of that as one standard deviation. */
  a6: { sidesMm: [148, 105], sizeSdMm: 0.75 },
} as const satisfies Record<string, { readonly sidesMm: readonly [number, number]; readonly sizeSdMm: number }>
export type KnownObject = keyof typeof KNOWN_OBJECTS

/** How well a size someone read off a ruler and typed is known, mm: half a millimetre's graduation. Common practice, no source. */
export const TYPED_SIZE_SD_MM = 0.25

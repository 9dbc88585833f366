/** Limits are inclusive. Inches are kept as millimetres in binary fractions, so a reading this close to a limit is on it. */
export const TOLERANCE = 1e-6

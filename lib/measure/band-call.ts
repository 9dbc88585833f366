/** A width against a band, given how sure it is. */
export type BandCall = 'inside' | 'outside' | 'cannot-tell'

/** An uncertainty is stated as two standard deviations: about 95 of 100 errors are smaller (JCGM 100:2008 (GUM), 6.2; from memory). */
export const COVERAGE = 2

/** Limits of a width, mm; null is open. */
export type WidthBand = { readonly minMm: number | null; readonly maxMm: number | null }

/**
 * Whether a width is inside or outside the band, or its uncertainty reaches over a limit and the photo cannot tell.
 *
 * @param sdMm one standard deviation of the width
 * @throws RangeError when the width or its standard deviation is negative or not finite
 */
export function bandCall(widthMm: number, sdMm: number, { minMm, maxMm }: WidthBand): BandCall {
  if (!(Number.isFinite(widthMm) && widthMm >= 0 && Number.isFinite(sdMm) && sdMm >= 0)) {
    throw new RangeError(`A width of ${String(widthMm)} ± ${String(sdMm)} mm cannot be compared with a band: give two finite numbers of 0 or more.`)
  }
  const [low, high] = [widthMm - COVERAGE * sdMm, widthMm + COVERAGE * sdMm]
  if ((minMm !== null && high < minMm) || (maxMm !== null && low > maxMm)) return 'outside'
  return (minMm === null || low >= minMm) && (maxMm === null || high <= maxMm) ? 'inside' : 'cannot-tell'
}

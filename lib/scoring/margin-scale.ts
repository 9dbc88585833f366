import type { Finding } from './types'

/** A band's half-width is this share of the scale at most, so that the middle of any band is about as comfortable as another's. */
const HALF_BAND_SHARE = 2 / 3

/**
 * What divides a margin of a rule before margins of different rules are compared: the rule's own scale, or less in a band so narrow
 * that its middle could not be told from its edge. Five to six diameters of 0.045 in wire leave 0.57 mm on either side; a scale of 1.2
 * would call even the middle a close thing. Our choice, no source.
 */
export function marginScale(scale: number, { min, max }: Finding['limit']): number {
  return min !== null && max !== null && max > min ? Math.min(scale, (max - min) / 2 / HALF_BAND_SHARE) : scale
}

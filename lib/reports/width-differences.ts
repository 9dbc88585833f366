/** A width read at a place along the weld, mm. */
export type WidthAt = { readonly atMm: number; readonly widthMm: number }

/** Two readings this close along the weld are taken to be of the same place, mm. */
const SAME_PLACE_MM = 2

/** The first's width less the second's at each place both measured, mm, in the first's order. */
export function widthDifferences(first: readonly WidthAt[], second: readonly WidthAt[]): number[] {
  return first.flatMap(({ atMm, widthMm }) => {
    const other = second.find((each) => Math.abs(each.atMm - atMm) <= SAME_PLACE_MM)
    return other ? [widthMm - other.widthMm] : []
  })
}

import type { Limit, Size } from '../../criteria/types'
import type { Facts, Widths } from '../facts'
import { limitFor, variesAlong } from '../limit'
import type { NotMeasuredReason } from '../reason'
import type { Indication, Station } from '../types'

/** The size of an indication a rule asks for, or null when it was not measured. */
export function sizeOf(indication: Indication, size: Size): number | null {
  switch (size) {
    case 'depth': return indication.depthMm ?? null
    case 'diameter': return indication.diameterMm ?? null
    case 'height': return indication.heightMm ?? null
    case 'largest': {
      const largest = Math.max(indication.depthMm ?? -1, indication.heightMm ?? -1, indication.diameterMm ?? -1)
      return largest < 0 ? null : largest
    }
  }
}

export function reasonWithoutSize(size: Size): NotMeasuredReason {
  return size === 'largest' ? 'indication-without-size' : `indication-without-${size}`
}

/** The narrowest widths read, of the bead and of its root. */
function narrowest(stations: readonly Station[]): Widths {
  let [widthMm, rootWidthMm] = [Infinity, Infinity]
  for (const station of stations) {
    widthMm = Math.min(widthMm, station.widthMm ?? Infinity)
    rootWidthMm = Math.min(rootWidthMm, station.rootWidthMm ?? Infinity)
  }
  return { ...(widthMm < Infinity && { widthMm }), ...(rootWidthMm < Infinity && { rootWidthMm }) }
}

/** What limits on an indication are held against where they depend on a width: the narrowest read. Null when none of them does. */
export const widthsFor = (limits: readonly (Limit | null)[]): (stations: readonly Station[]) => Widths | null =>
  (limits.some(variesAlong) ? narrowest : () => null)

/** True when widths are all that keeps these limits from being known: with nothing seen there is nothing to hold against a width. */
export const lackOnlyWidths = (limits: readonly (Limit | null)[], weld: Facts): boolean =>
  limits.every((limit) => limit === null || limitFor(limit, weld, { widthMm: 1, rootWidthMm: 1 }) !== null)

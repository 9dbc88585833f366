import type { Size } from '../../criteria/types'
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

/** The narrowest width read: what a limit on an indication that depends on the width is held against. Null when no station has one. */
export function narrowestWidth(stations: readonly Station[]): number | null {
  let narrowest = Infinity
  for (const station of stations) {
    if (station.widthMm !== undefined && station.widthMm !== null && station.widthMm < narrowest) narrowest = station.widthMm
  }
  return narrowest === Infinity ? null : narrowest
}

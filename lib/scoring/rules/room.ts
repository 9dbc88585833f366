import type { Allowance } from '../../criteria/types'
import type { Room } from '../windows/sustained-size'

/** The room an allowance gives a weld of this length. A window longer than the weld is the weld. */
export function roomIn(over: Allowance, weldMm: number): Room {
  if (over.per === 'weld') return { windowMm: weldMm, allowedMm: over.share * weldMm }
  if (over.windowMm <= weldMm) return { windowMm: over.windowMm, allowedMm: over.lengthMm }
  return { windowMm: weldMm, allowedMm: over.shareIfShorter === undefined ? over.lengthMm : over.shareIfShorter * weldMm }
}

import { toeSide } from '../coaching/toe-side'
import { drawings } from '../language/drawings'
import { say, type Locale } from '../language/say'

/**
 * What the trade calls a toe. In the horizontal position, and in an overhead fillet, one toe lies above the other; in the
 * other positions they lie to the left and right of someone looking along the travel. Toe A is the upper or left one.
 */
export function toeName(toe: 'A' | 'B', position: string, locale: Locale): string {
  return say(drawings, locale, `toe-${toeSide(position, toe)}`)
}

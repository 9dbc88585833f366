import { drawings } from '../language/drawings'
import { say, type Locale } from '../language/say'

/**
 * What the trade calls a toe. In the horizontal position one toe lies above the other; in flat, vertical and overhead welds they lie
 * to the left and right of someone looking along the travel. Toe A is the upper or left one.
 */
export function toeName(toe: 'A' | 'B', position: string, locale: Locale): string {
  const horizontal = position.trim().startsWith('2')
  if (toe === 'A') return say(drawings, locale, horizontal ? 'toe-upper' : 'toe-left')
  return say(drawings, locale, horizontal ? 'toe-lower' : 'toe-right')
}

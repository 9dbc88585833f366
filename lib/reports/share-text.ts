import type { Locale } from '../language/say'

/**
 * A share as a whole percentage: '63 %'. '<1 %' and '>99 %' where rounding would say none or all.
 *
 * @throws RangeError when the share is not within 0 to 1
 */
export function shareText(share: number): string {
  if (!(share >= 0 && share <= 1)) throw new RangeError(`A share must lie within 0 and 1, not ${share}.`)
  const percent = Math.round(share * 100)
  if (percent === 0 && share > 0) return '<1 %'
  if (percent === 100 && share < 1) return '>99 %'
  return `${percent} %`
}

/** A count with its thousands grouped: '1,912'. */
export function countText(count: number, locale: Locale): string {
  return count.toLocaleString(locale === 'es' ? 'es-US' : 'en-US')
}

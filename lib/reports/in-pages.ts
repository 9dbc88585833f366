/**
 * Things in their order, so many to a page.
 *
 * @throws RangeError when a page would hold none
 */
export function inPages<T>(things: readonly T[], each: number): T[][] {
  if (!Number.isInteger(each) || each < 1) throw new RangeError('A page must hold a whole number of things, at least one.')
  return Array.from({ length: Math.ceil(things.length / each) }, (_, page) => things.slice(page * each, (page + 1) * each))
}

/** All numbers inside a result, however deep: to check that none of them is NaN or infinite. */
export function everyNumber(value: unknown): number[] {
  if (typeof value === 'number') return [value]
  if (typeof value === 'object' && value !== null) return Object.values(value).flatMap(everyNumber)
  return []
}

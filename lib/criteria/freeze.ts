/** Freezes data to the bottom: criteria are immutable once used, and scoring relies on it. */
export function freezeDeep<T>(data: T): T {
  if (typeof data === 'object' && data !== null && !Object.isFrozen(data)) {
    Object.freeze(data)
    Object.values(data).forEach(freezeDeep)
  }
  return data
}

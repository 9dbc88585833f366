/** Door checks shared by the estimators. Each throws RangeError with a sentence that says what to change. */

/** One finite number: not NaN, not infinite, not null. */
export function requireFinite(value: number, name: string): void {
  if (!Number.isFinite(value)) throw new RangeError(`${name} must be a finite number, not ${String(value)}.`)
}

/** A number above zero. */
export function requirePositive(value: number, name: string): void {
  requireFinite(value, name)
  if (value <= 0) throw new RangeError(`${name} must be above 0, not ${value}.`)
}

/** A whole number, at least `least`. */
export function requireCount(value: number, name: string, least = 0): void {
  if (!Number.isSafeInteger(value) || value < least) {
    throw new RangeError(`${name} must be a whole number of at least ${least}, not ${String(value)}.`)
  }
}

/** A share from 0 to 1, both ends allowed. */
export function requireShare(value: number, name: string): void {
  if (typeof value !== 'number' || !(value >= 0 && value <= 1)) throw new RangeError(`${name} must be a share from 0 to 1, not ${String(value)}.`)
}

/** A share strictly between 0 and 1. */
export function requireInnerShare(value: number, name: string): void {
  if (typeof value !== 'number' || !(value > 0 && value < 1)) throw new RangeError(`${name} must lie between 0 and 1, not ${String(value)}.`)
}

/** A confidence level written as a share, such as 0.95. */
export function requireConfidence(confidence: number): void {
  if (typeof confidence !== 'number' || !(confidence > 0 && confidence < 1)) {
    throw new RangeError(`The confidence must lie between 0 and 1, such as 0.95, not ${String(confidence)}.`)
  }
}

/** A list, though perhaps an empty one. `name` starts a sentence. */
export function requireList(list: unknown, name: string): void {
  if (!Array.isArray(list)) throw new RangeError(`${name} must be given as a list.`)
}

/** A list of lists, such as the rows of a table. `rowName` starts a sentence. */
export function requireRows(rows: readonly unknown[], name: string, rowName: string): void {
  requireList(rows, name)
  rows.forEach((row, i) => requireList(row, `${rowName} ${i + 1}`))
}

/** Values by name, such as a count and its total. `name` starts a sentence. */
export function requireNamed<T extends object>(values: T, name: string): T {
  if (typeof values !== 'object' || (values as T | null) === null) throw new RangeError(`${name} must be given, each value by its name.`)
  return values
}

/** At least `least` finite numbers. */
export function requireValues(values: readonly number[], name: string, least: number): void {
  requireList(values, name)
  if (values.length < least) {
    throw new RangeError(`${name} must hold at least ${least} ${least === 1 ? 'number' : 'numbers'}; there ${values.length === 1 ? 'is' : 'are'} ${values.length}.`)
  }
  const bad = values.findIndex(value => !Number.isFinite(value))
  if (bad >= 0) {
    throw new RangeError(`${name} must hold finite numbers only; number ${bad + 1} is ${String(values[bad])}. Leave out what was not measured.`)
  }
}

/** Two lists that belong together, entry by entry. Only `aName` starts a sentence. */
export function requireSameLength(a: readonly unknown[], aName: string, b: readonly unknown[], bName: string): void {
  requireList(a, aName)
  requireList(b, bName.charAt(0).toUpperCase() + bName.slice(1))
  if (a.length !== b.length) {
    throw new RangeError(`${aName} and ${bName} must be equally long; there are ${a.length} and ${b.length}.`)
  }
}

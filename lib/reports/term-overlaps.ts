export type Days = { readonly startsOn: Date; readonly endsOn: Date }

/** The terms that share at least one day with another one; first and last day belong to a term. Terms may overlap: it is said, not refused. */
export function overlapping<T extends Days>(term: Days, others: readonly T[]): T[] {
  return others.filter((other) => other.startsOn <= term.endsOn && term.startsOn <= other.endsOn)
}

/**
 * Where a number comes from, and how sure we are of it.
 *
 * - `confirmed`: read in the standard or regulation itself, or a direct quotation of it
 * - `secondary`: read in a handbook, an agency's summary or training notes
 * - `memory`: recalled by the authors and not read again; shown as such on every screen
 * - `common-practice`: what the trade does; no document stands behind it
 */
export type SourceStatus = 'confirmed' | 'secondary' | 'memory' | 'common-practice'

/** A citation. `clause` is null where the source has no clause to name. */
export type Source = {
  readonly title: string
  readonly clause: string | null
  readonly status: SourceStatus
  /** What a reader should know before relying on it: edition, disagreement between sources, what is missing. */
  readonly note?: string
}

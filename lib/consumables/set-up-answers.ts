/** Grooves of the drive rolls: smooth V, smooth U, knurled. */
export const ROLL_GROOVES = ['v', 'u', 'knurled'] as const
export type RollGroove = (typeof ROLL_GROOVES)[number]

/** What the student finds on the machine and the positioner before the arc; null is not looked at. Kept for the check, never for the record. */
export type SetUpAnswers = {
  readonly wireMm: number | null
  readonly rollMm: number | null
  readonly groove: RollGroove | null
  readonly position: string | null
}
export const NO_ANSWERS: SetUpAnswers = { wireMm: null, rollMm: null, groove: null, position: null }

/** Why a rule that applies could not be judged. */
export const NOT_MEASURED_REASONS = [
  'not-looked-for', 'no-answer', 'no-stations', 'one-station',
  'station-without-width', 'station-without-legs', 'station-without-throat', 'station-without-convexity', 'station-without-reinforcement',
  'station-without-penetration', 'station-without-root-concavity', 'station-without-misalignment', 'station-without-underfill',
  'station-without-root-width', 'station-without-shrinkage-groove', 'station-without-root-shortfall', 'station-without-root-pore',
  'station-without-root-gap', 'station-without-toe-angle',
  'indication-without-depth', 'indication-without-diameter', 'indication-without-height', 'indication-without-size', 'indication-without-length',
  'no-thickness', 'no-electrode-diameter', 'no-nominal-leg',
] as const

/** Why a rule of the set says nothing about this weld. */
export const NOT_APPLICABLE_REASONS = [
  'fillet-only', 'groove-only', 'other-thickness', 'other-service', 'permitted', 'depends-on-application', 'not-recorded',
] as const

export type NotMeasuredReason = (typeof NOT_MEASURED_REASONS)[number]
export type NotApplicableReason = (typeof NOT_APPLICABLE_REASONS)[number]

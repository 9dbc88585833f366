import type { Source } from '../source'

export const FIRE_CLEARANCE_SOURCE: Source = { title: 'OSHA 29 CFR 1910.252', clause: '(a)(2)(iii)(A)', status: 'confirmed' }

/** Radius about the work kept free of what burns, wall and floor openings included; both units as the rule prints them. */
export const FIRE_CLEARANCE = { ft: 35, m: 11 } as const

/** How long the watch stays after the last arc, rule by rule. */
export const FIRE_WATCH_RULES: readonly { readonly minutes: number; readonly source: Source }[] = [
  { minutes: 30, source: { title: 'OSHA 29 CFR 1910.252', clause: '(a)(2)(iii)(B)', status: 'confirmed' } },
  { minutes: 60, source: { title: 'NFPA 51B:2019', clause: null, status: 'secondary', note: 'Up to 3 h of monitoring more where the permit asks for it (5.6.3). Read in a fire-code consultant’s notice.' } },
]

/** The stricter rule wins: the longest watch of all of them. */
export function strictestFireWatch(): { readonly minutes: number; readonly source: Source } {
  return FIRE_WATCH_RULES.reduce((longest, rule) => (rule.minutes > longest.minutes ? rule : longest))
}

export const FIRE_WATCH_REASONS = ['more-than-minor-fire', 'combustibles-near', 'easily-ignited-beyond', 'openings-near', 'behind-metal-wall'] as const
/** Any of these calls for a fire watch (29 CFR 1910.252(a)(2)(iii)(A)). */
export type FireWatchReason = (typeof FIRE_WATCH_REASONS)[number]

export type FireWatchNeed =
  | { readonly kind: 'watch'; readonly because: readonly FireWatchReason[]; readonly minutesAfter: number }
  | { readonly kind: 'none' }
  | { readonly kind: 'unknown'; readonly missing: readonly FireWatchReason[] }

/**
 * Whether a fire watch is needed. null means nobody has looked; then the answer is unknown, never "none".
 */
export function fireWatchNeed(seen: Readonly<Record<FireWatchReason, boolean | null>>): FireWatchNeed {
  const because = FIRE_WATCH_REASONS.filter((reason) => seen[reason] === true)
  const missing = FIRE_WATCH_REASONS.filter((reason) => seen[reason] === null)
  if (because.length > 0) return { kind: 'watch', because, minutesAfter: strictestFireWatch().minutes }
  return missing.length > 0 ? { kind: 'unknown', missing } : { kind: 'none' }
}

import type { Readiness } from './types'

export const YES_OR_NO: Readiness = { as: 'attribute' }

const margin = (scale: number): Readiness => ({ as: 'margin', scale })

/**
 * What divides a margin, in millimetres where nothing else is said, before margins of different rules are compared. Chosen so that the worst margin of a learner
 * varies by about 0.4 from one bead to the next: a learner whose worst width wanders by half a millimetre gets a scale of 1.2.
 * Our choice, no source: to be checked against a program's own coupons.
 */
export const SCALE = {
  width: margin(1.2),
  spread: margin(1.5),
  leg: margin(1.5),
  balance: margin(1.5),
  throat: margin(1),
  convexity: margin(0.8),
  reinforcement: margin(1),
  undercut: margin(0.5),
  overlap: margin(1),
  pore: margin(1),
  pipe: margin(0.5),
  poresPerInch: margin(3),
  poresPerFoot: margin(6),
  misalignment: margin(1),
  root: margin(0.8),
  penetration: margin(1),
  gap: margin(1),
  /** In degrees. */
  angle: margin(20),
} as const

import type { Source } from '../source'

export const VENTILATION_SOURCE: Source = { title: 'OSHA 29 CFR 1910.252', clause: '(c)(2)', status: 'confirmed' }
export const LOCAL_EXHAUST_SOURCE: Source = { title: 'OSHA 29 CFR 1910.252', clause: '(c)(3)', status: 'confirmed' }

/** Thresholds of 29 CFR 1910.252(c)(2) and (3), in both units as the rule prints them. */
export const VENTILATION = {
  spacePerWelder: { ft3: 10_000, m3: 284 },
  ceiling: { ft: 16, m: 5 },
  airPerWelder: { ft3PerMin: 2000, m3PerMin: 57 },
  hoodCapture: { ftPerMin: 100, mPerMin: 30 },
} as const

export type VentilationReason = 'small-space' | 'low-ceiling' | 'obstructed'

/** The answer for welding on mild steel; fluorides, zinc, lead and the like have rules of their own in (c)(5) to (c)(12). */
export type VentilationNeed =
  | { readonly kind: 'mechanical'; readonly because: readonly VentilationReason[]; readonly airM3PerMin: number }
  | { readonly kind: 'natural' }
  | { readonly kind: 'unknown'; readonly missing: readonly VentilationReason[] }

/**
 * Whether a shop needs mechanical ventilation, or whether natural ventilation is held sufficient.
 * One reason is enough to need it; with no reason found and something unknown the answer is unknown, never "natural".
 * Local exhaust at each booth or supplied air stands in for the air flow.
 *
 * @param room volume in m³, ceiling in m, welders at work at once; `obstructed` for confined spaces or barriers to cross ventilation
 * @throws RangeError when a figure is not above zero
 */
export function ventilationNeed(room: {
  readonly volumeM3: number | null
  readonly ceilingM: number | null
  readonly obstructed: boolean | null
  readonly welders: number
}): VentilationNeed {
  if (!Number.isInteger(room.welders) || room.welders < 1) throw new RangeError(`Ventilation is counted for one welder or more, not ${room.welders}.`)
  for (const figure of [room.volumeM3, room.ceilingM]) {
    if (figure !== null && !(figure > 0 && Number.isFinite(figure))) throw new RangeError(`A room size of ${figure} is not possible.`)
  }
  const answers: readonly (readonly [VentilationReason, boolean | null])[] = [
    ['small-space', room.volumeM3 === null ? null : room.volumeM3 / room.welders < VENTILATION.spacePerWelder.m3],
    ['low-ceiling', room.ceilingM === null ? null : room.ceilingM < VENTILATION.ceiling.m],
    ['obstructed', room.obstructed],
  ]
  const because = answers.flatMap(([reason, holds]) => (holds === true ? [reason] : []))
  const missing = answers.flatMap(([reason, holds]) => (holds === null ? [reason] : []))
  if (because.length > 0) return { kind: 'mechanical', because, airM3PerMin: VENTILATION.airPerWelder.m3PerMin * room.welders }
  return missing.length > 0 ? { kind: 'unknown', missing } : { kind: 'natural' }
}

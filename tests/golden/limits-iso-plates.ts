// ISO 5817 Table 1: underfill (511), root concavity (515) and misalignment (507) of butt welds, which are judged where they were recorded.
import { casesOf, GROOVE, oneBadStretch, twoBadStretches, type Change, type LimitCase } from './limits-case'

export type Level = 'b' | 'c' | 'd'
export type Of = (rule: string, source: string) => ReturnType<typeof casesOf>

export const SHEETS = { b: 'Comparison sheet of level B, ISO 5817 values', c: 'Copy of the level C column of ISO 5817 Table 1', d: 'BS EN ISO 5817:2014 Table 1 and the wiki of GDL Solutions' } as const
export const MEMORY = 'From memory'
export const PAST = 0.01

type Field = 'underfillMm' | 'rootConcavityMm' | 'shrinkageGrooveMm' | 'rootShortfallMm'

/** A reading of the root or face that is allowed only as a short imperfection, or not at all. */
export function shortReading(of: Of, rule: string, source: string, field: Field, edges: readonly (readonly [thicknessMm: number, max: number])[]): readonly LimitCase[] {
  const one = of(rule, source)
  const weld = (thicknessMm: number, lengthMm = 400) => ({ ...GROOVE, thicknessMm, lengthMm })
  const short = (thicknessMm: number) => (reading: number): Change => ({ weld: weld(thicknessMm), stations: oneBadStretch([field], 0, reading, 12.5, 400) })
  const long = (halfMm: number, lengthMm = 400): Change => ({ weld: weld(10, lengthMm), stations: oneBadStretch([field], 0, 0.15, halfMm, lengthMm) })
  const apart = (gap: number): Change => ({ weld: weld(10), stations: twoBadStretches(field, 0, 0.15, gap, 400) })
  return [
    ...edges.flatMap(([thickness, max]) => one.edge(`t ${thickness}, short`, short(thickness), max, max + PAST)),
    one.accepts('25 mm long', long(12.5)),
    one.rejects('25.05 mm long', long(12.525)),
    one.accepts('25 mm in any 100 mm', apart(75)),
    one.rejects('25.05 mm in some 100 mm', apart(74.95)),
    one.accepts('a quarter of an 80 mm weld', long(10, 80)),
    one.rejects('more than a quarter of an 80 mm weld', long(10.2, 80)),
    one.accepts('none along the weld', { weld: weld(10), at: { [field]: 0 } }),
    one.rejects('a little along the whole weld', { weld: weld(10), at: { [field]: 0.05 } }),
    one.ignores('not recorded', { weld: weld(10) }),
    one.ignores('a fillet', { at: { [field]: 9 } }),
    one.ignores('a thin fillet', { weld: { thicknessMm: 2 }, at: { [field]: 9 } }),
    one.ignores('not recorded on a thin plate', { weld: weld(2) }),
  ]
}

export function notPermittedThin(of: Of, rule: string, source: string, field: Field): readonly LimitCase[] {
  const at = (thicknessMm: number, reading: number): Change => ({ weld: { ...GROOVE, thicknessMm }, stations: oneBadStretch([field], 0, reading, 10, 400) })
  return [
    of(rule, source).accepts('3 mm, none', at(3, 0)),
    of(rule, source).rejects('3 mm, any', at(3, 0.05)),
    of(rule, source).accepts('just over 3 mm', at(3.05, 0.1)),
  ]
}

export function roots(of: Of, level: Level): readonly LimitCase[] {
  const source = level === 'd' ? MEMORY : SHEETS[level]
  if (level === 'b') return (['511', '515'] as const).flatMap((rule) => {
    const field = rule === '511' ? 'underfillMm' : 'rootConcavityMm'
    return [...notPermittedThin(of, rule, source, field), ...shortReading(of, rule, source, field, [[8, 0.4], [30, 0.5]])]
  })
  if (level === 'c') return [
    ...shortReading(of, '511', source, 'underfillMm', [[2, 0.2], [8, 0.8], [30, 1]]),
    ...shortReading(of, '515', source, 'rootConcavityMm', [[2, 0.2], [8, 0.8], [30, 1]]),
  ]
  const thinRoot = (thicknessMm: number) => (reading: number): Change => ({ weld: { ...GROOVE, thicknessMm }, at: { rootConcavityMm: reading } })
  return [
    ...shortReading(of, '511', source, 'underfillMm', [[2, 0.5], [4, 1], [30, 2]]),
    ...shortReading(of, '515', source, 'rootConcavityMm', [[4, 0.8], [30, 2]]),
    ...of('515', source).edge('thin, 0.2 + 0.1 t, any length', thinRoot(2), 0.4, 0.41),
    of('515', source).accepts('any length at 3 mm', thinRoot(3)(0.4)),
    of('515', source).rejects('any length just over 3 mm', thinRoot(3.05)(0.4)),
  ]
}

export function misalignment(of: Of, level: Level): readonly LimitCase[] {
  const rule = of('507', MEMORY)
  const step = (thicknessMm: number) => (misalignmentMm: number): Change => ({ weld: { ...GROOVE, thicknessMm }, at: { misalignmentMm } })
  const { thin, thick, cap, between } = {
    b: { thin: 0.4, thick: 1, cap: 3, between: 0.4 }, c: { thin: 0.5, thick: 1.5, cap: 4, between: 0.5 }, d: { thin: 0.7, thick: 2.5, cap: 5, between: 0.9 },
  }[level]
  return [
    ...rule.edge('t 2', step(2), thin, thin + PAST), ...rule.edge('t 10', step(10), thick, thick + PAST), ...rule.edge('t 60', step(60), cap, cap + PAST),
    rule.accepts('at 3 mm', step(3)(between)), rule.rejects('just over 3 mm', step(3.05)(between)),
    ...[2, 10].flatMap((thicknessMm) => [
      rule.ignores(`not recorded in ${thicknessMm} mm`, { weld: { ...GROOVE, thicknessMm } }),
      rule.ignores(`a fillet on ${thicknessMm} mm`, { weld: { thicknessMm }, at: { misalignmentMm: 9 } }),
    ]),
  ]
}

// ISO 5817 Table 1: what shows on the root side (4021, 5013, 504, 516), the toe angle (505) and the gap under a fillet (617), which are
// judged where they were recorded. A nominal throat is written out: leg 10, a 7.071; leg 30, a 21.213.
import { GROOVE, type Change, type LimitCase } from './limits-case'
import { MEMORY, notPermittedThin, PAST, SHEETS, shortReading, type Level, type Of } from './limits-iso-plates'

const FIRST_ROWS = 'BS EN ISO 5817:2014 Table 1, first rows'
const WIKI = 'Wiki of GDL Solutions, ISO 5817 level D'
const WEAK = 'Public text that is no proper source'
const sheetOf = (level: Level): string => (level === 'd' ? WIKI : SHEETS[level])
const groove = (thicknessMm: number) => ({ ...GROOVE, thicknessMm })

/** Recorded as none, as a little, or not at all, where nothing is permitted. */
function noneAllowed(of: Of, rule: string, source: string, field: 'rootShortfallMm' | 'rootPoreMm'): readonly LimitCase[] {
  const one = of(rule, source)
  return [
    one.accepts('none', { weld: GROOVE, at: { [field]: 0 } }), one.rejects('a little', { weld: GROOVE, at: { [field]: 0.05 } }),
    one.ignores('not recorded', { weld: GROOVE, reason: 'not-recorded' }), one.ignores('a fillet', { at: { [field]: 3 }, reason: 'groove-only' }),
  ]
}

export function rootPenetration(of: Of, level: Level): readonly LimitCase[] {
  return level === 'd'
    ? shortReading(of, '4021', FIRST_ROWS, 'rootShortfallMm', [[2, 0.4], [8, 1.6], [30, 2]])
    : noneAllowed(of, '4021', FIRST_ROWS, 'rootShortfallMm')
}

export function shrinkageGrooves(of: Of, level: Level): readonly LimitCase[] {
  const source = sheetOf(level)
  if (level === 'b') return [
    ...notPermittedThin(of, '5013', source, 'shrinkageGrooveMm'), ...shortReading(of, '5013', source, 'shrinkageGrooveMm', [[8, 0.4], [30, 0.5]]),
  ]
  if (level === 'c') return shortReading(of, '5013', source, 'shrinkageGrooveMm', [[2, 0.2], [8, 0.8], [30, 1]])
  const all = (thicknessMm: number) => (shrinkageGrooveMm: number): Change => ({ weld: groove(thicknessMm), at: { shrinkageGrooveMm } })
  return [
    ...shortReading(of, '5013', source, 'shrinkageGrooveMm', [[4, 0.8], [30, 2]]),
    ...of('5013', source).edge('thin, 0.2 + 0.1 t, any length', all(2), 0.4, 0.41),
    of('5013', source).accepts('any length at 3 mm', all(3)(0.4)), of('5013', source).rejects('any length just over 3 mm', all(3.05)(0.4)),
  ]
}

export function excessPenetration(of: Of, level: Level): readonly LimitCase[] {
  const rule = of('504', sheetOf(level))
  const root = (thicknessMm: number, rootWidthMm: number) => (penetrationMm: number): Change => ({ weld: groove(thicknessMm), at: { rootWidthMm, penetrationMm } })
  const { thin, thick, cap, between } = {
    b: { thin: 1.4, thick: 1.6, cap: 3, between: 1.6 }, c: { thin: 2.2, thick: 2.8, cap: 4, between: 3 }, d: { thin: 3.4, thick: 4, cap: 5, between: 4 },
  }[level]
  return [
    ...rule.edge('thin, on a 4 mm root', root(2, 4), thin, thin + PAST), rule.accepts('thin has no cap', root(2, 80)(6)),
    ...rule.edge('on a 3 mm root', root(10, 3), thick, thick + PAST), ...rule.edge('at most', root(10, 80), cap, cap + PAST),
    ...rule.edge('on a root with no width of its own', root(10, 0), 1, 1 + PAST),
    rule.rejects('at 3 mm the thin limit', root(3, 4)(between)), rule.accepts('just over 3 mm the other', root(3.05, 4)(between)),
    rule.rejects('beyond the cap, root width not read', { weld: groove(10), at: { penetrationMm: cap + PAST } }),
    ...[2, 10].flatMap((thicknessMm) => [
      rule.ignores(`not recorded in ${thicknessMm} mm`, { weld: groove(thicknessMm), reason: 'not-recorded' }),
      rule.ignores(`a fillet on ${thicknessMm} mm`, { weld: { thicknessMm }, at: { penetrationMm: 9, rootWidthMm: 4 } }),
    ]),
  ]
}

export function toeAngles(of: Of, level: Level): readonly LimitCase[] {
  const toe = (weld: Change['weld'] = {}) => (toeAngleDeg: number): Change => ({ weld, at: { toeAngleDeg } })
  const [butt, fillet] = { b: [150, 110], c: [110, 100], d: [90, 90] }[level] as [number, number]
  const [ofButt, ofFillet] = [of('505', level === 'd' ? WEAK : SHEETS[level]), of('505', level === 'c' ? SHEETS.c : WEAK)]
  return [
    ...ofButt.edge('a butt weld, degrees', toe(GROOVE), butt, butt - 0.1), ...ofFillet.edge('a fillet, degrees', toe(), fillet, fillet - 0.1),
    ofButt.rejects('one sharp toe among good ones', { weld: GROOVE, stations: [{ atMm: 50, toeAngleDeg: 160 }, { atMm: 90, toeAngleDeg: 80 }] }),
    ofButt.accepts('flush', toe(GROOVE)(180)),
    ofButt.ignores('not recorded on a butt weld', { weld: GROOVE, reason: 'not-recorded' }), ofFillet.ignores('not recorded on a fillet', { reason: 'not-recorded' }),
  ]
}

export function rootPores(of: Of, level: Level): readonly LimitCase[] {
  if (level !== 'd') return noneAllowed(of, '516', SHEETS[level], 'rootPoreMm')
  return [
    of('516', MEMORY).ignores('permitted in places', { weld: GROOVE, at: { rootPoreMm: 2 }, reason: 'permitted' }),
    of('516', MEMORY).ignores('a fillet', { at: { rootPoreMm: 2 }, reason: 'groove-only' }),
  ]
}

export function filletGaps(of: Of, level: Level): readonly LimitCase[] {
  const rule = of('617', MEMORY)
  const gap = (nominalLegMm: number, thicknessMm = 10) => (rootGapMm: number): Change => ({ weld: { nominalLegMm, thicknessMm }, at: { rootGapMm } })
  const [on, cap] = { b: [1.2071, 2], c: [1.9142, 3], d: [3.1213, 4] }[level] as [number, number]
  return [
    ...rule.edge('leg 10', gap(10), on, on + PAST), ...rule.edge('leg 30, at most', gap(30), cap, cap + PAST),
    rule.rejects('just over 3 mm', gap(10, 3.05)(9)), rule.ignores('at 3 mm', { ...gap(10, 3)(9), reason: 'other-thickness' }),
    rule.ignores('not recorded', { reason: 'not-recorded' }), rule.ignores('a groove', { weld: GROOVE, at: { rootGapMm: 9 }, reason: 'fillet-only' }),
  ]
}

// ISO 5817 Table 1, levels B, C and D. Numbers typed from column sheets and a wiki of the standard, as named beside each; a nominal throat
// is written out for the leg used: leg 4, a 2.8284; leg 8, a 5.6568; leg 10, a 7.071; leg 30, a 21.213.
import type { Indication, Station, Weld } from '@/lib/scoring/types'
import { casesOf, GROOVE, oneBadStretch, twoBadStretches, type Change, type LimitCase } from './limits-case'
import { MEMORY, misalignment, PAST, roots, SHEETS, type Level, type Of } from './limits-iso-plates'
import { excessPenetration, filletGaps, rootPenetration, rootPores, shrinkageGrooves, toeAngles } from './limits-iso-roots'

type Edges = readonly (readonly [what: string, weld: Partial<Weld>, on: number])[]

const seen = (indications: readonly Indication[], weld: Partial<Weld> = {}): Change => ({ indications, weld })
const any = (of: Of, rule: string, source: string, kind: Indication['kind'], weld: Partial<Weld> = {}): readonly LimitCase[] => [
  of(rule, source).accepts('none', { weld }),
  of(rule, source).rejects('any', seen([{ kind, atMm: 50, depthMm: 0.01, diameterMm: 0.01, heightMm: 0.01, lengthMm: 1 }], weld)),
]
const sized = (of: Of, rule: string, source: string, edges: Edges, change: (size: number, weld: Partial<Weld>) => Change): readonly LimitCase[] =>
  edges.flatMap(([what, weld, on]) => of(rule, source).edge(what, (size) => change(size, weld), on, on + PAST))

function pores(of: Of, level: Level): readonly LimitCase[] {
  const source = 'BS EN ISO 5817:2014 Table 1; level C column copy'
  const one = (diameterMm: number, weld: Partial<Weld>) => seen([{ kind: 'pore', atMm: 50, diameterMm }], weld)
  if (level === 'b') return any(of, '2017', source, 'pore')
  const rule = of('2017', source)
  if (level === 'c') return [
    ...any(of, '2017', source, 'pore', { thicknessMm: 3 }),
    rule.accepts('just over 3 mm', one(0.5, { thicknessMm: 3.05 })),
    ...sized(of, '2017', source, [
      ['0.2 a', { thicknessMm: 10, nominalLegMm: 8 }, 1.13136], ['2 at most', { nominalLegMm: 30 }, 2], ['0.2 s', { ...GROOVE, thicknessMm: 5 }, 1],
    ], one),
  ]
  return [
    ...sized(of, '2017', source, [
      ['thin, 0.3 a', { thicknessMm: 2, nominalLegMm: 4 }, 0.84852], ['0.3 a', { nominalLegMm: 8 }, 1.69704], ['3 at most', { nominalLegMm: 30 }, 3],
    ], one),
    rule.accepts('at 3 mm no cap', one(3.2, { thicknessMm: 3, nominalLegMm: 16 })),
    rule.rejects('just over 3 mm the cap', one(3.2, { thicknessMm: 3.05, nominalLegMm: 16 })),
  ]
}

function pipes(of: Of, level: Level): readonly LimitCase[] {
  const source = 'BS EN ISO 5817:2014 Table 1; level C column copy'
  const one = (depthMm: number, weld: Partial<Weld>) => seen([{ kind: 'crater-pipe', atMm: 400, depthMm }], weld)
  if (level === 'b') return any(of, '2025', source, 'crater-pipe')
  if (level === 'd') return sized(of, '2025', source, [['0.2 t', { thicknessMm: 2 }, 0.4], ['2 at most', { thicknessMm: 20 }, 2]], one)
  return [
    ...any(of, '2025', source, 'crater-pipe', { thicknessMm: 3 }),
    of('2025', source).accepts('just over 3 mm', one(0.1, { thicknessMm: 3.05 })),
    ...sized(of, '2025', source, [['0.1 t', { thicknessMm: 5 }, 0.5], ['1 at most', { thicknessMm: 20 }, 1]], one),
    of('2025', source).rejects('wide rather than deep', seen([{ kind: 'crater-pipe', atMm: 400, depthMm: 0.1, diameterMm: 1.2 }])),
  ]
}

const undercut = (depthMm: number, atMm: number, lengthMm: number): Indication => ({ kind: 'undercut', atMm, lengthMm, depthMm, toe: 'A' })

function undercuts(of: Of, level: Level): readonly LimitCase[] {
  const source = level === 'd' ? 'Wiki of GDL Solutions, ISO 5817 level D' : SHEETS[level]
  const rule = of('5011', source)
  const long = (depthMm: number, weld: Partial<Weld>) => seen([undercut(depthMm, 10, 300)], weld)
  const byLevel: Readonly<Record<Level, Edges>> = {
    b: [['0.05 t', { thicknessMm: 8 }, 0.4], ['0.5 at most', { thicknessMm: 30 }, 0.5]],
    c: [['0.1 t', { thicknessMm: 4 }, 0.4], ['0.5 at most', { thicknessMm: 30 }, 0.5]],
    d: [['0.2 t', { thicknessMm: 4 }, 0.8], ['1 at most', { thicknessMm: 30 }, 1]],
  }
  const thick = byLevel[level]
  if (level === 'b') return [
    ...any(of, '5011', source, 'undercut', { thicknessMm: 3 }),
    rule.accepts('just over 3 mm', long(0.1, { thicknessMm: 3.05 })),
    ...sized(of, '5011', source, thick, long),
  ]
  const max = level === 'c' ? 0.2 : 0.4
  const thin = { thicknessMm: 2 }
  const apart = (gap: number) => seen([undercut(0.1, 10, 25), undercut(0.1, 35 + gap, 25)], thin)
  return [
    ...sized(of, '5011', source, [['thin, short', thin, max]], (depth, weld) => seen([undercut(depth, 10, 20)], weld)),
    ...rule.edge('length of a short imperfection', (length) => seen([undercut(0.1, 10, length)], thin), 25, 25.05),
    rule.accepts('25 mm in any 100 mm', apart(75)),
    rule.rejects('25.05 mm in some 100 mm', apart(74.95)),
    ...rule.edge('a quarter of an 80 mm weld', (length) => seen([undercut(0.1, 10, length)], { ...thin, lengthMm: 80 }), 20, 20.4),
    rule.rejects('long at 3 mm', long(0.2, { thicknessMm: 3 })),
    rule.accepts('long just over 3 mm', long(0.2, { thicknessMm: 3.05 })),
    ...sized(of, '5011', source, thick, long),
  ]
}

/** h up to 1 + k b, no more than a cap. */
function faces(of: Of, rule: string, source: string, weld: Partial<Weld>, field: 'reinforcementMm' | 'convexityMm', k: number, cap: number): readonly LimitCase[] {
  const face = (widthMm: number) => (height: number): Change => ({ weld, at: { widthMm, [field]: height } })
  return [
    ...of(rule, source).edge('on a 10 mm face', face(10), 1 + 10 * k, 1 + 10 * k + PAST),
    ...of(rule, source).edge('at most', face(80), cap, cap + PAST),
  ]
}

function throats(of: Of, level: Level): readonly LimitCase[] {
  const source = level === 'c' ? 'ISO 5817 level C quoted in a public finite-element script' : level === 'b' ? SHEETS.b : MEMORY
  const rule = of('5213', source)
  const all = (nominalLegMm: number) => (throatMm: number): Change => ({ weld: { nominalLegMm }, at: { throatMm } })
  const grooves = [2, 10].map((thicknessMm) => rule.ignores(`a groove in ${thicknessMm} mm`, { weld: { ...GROOVE, thicknessMm } }))
  if (level === 'b') return [
    ...grooves,
    rule.accepts('nominal throat', all(10)(7.071)),
    rule.rejects('a hair under', all(10)(7.061)),
    rule.rejects('thin plate, a hair under', { weld: { thicknessMm: 2, nominalLegMm: 10 }, at: { throatMm: 7.061 } }),
  ]
  const short = (thicknessMm: number, nominalLegMm: number, a: number) => (by: number): Change =>
    ({ weld: { thicknessMm, nominalLegMm }, stations: oneBadStretch(['throatMm'], a, a - by, 12.5, 400) })
  const lengths = (thicknessMm: number): readonly LimitCase[] => {
    const weld = (lengthMm: number) => ({ thicknessMm, nominalLegMm: 10, lengthMm })
    const long = (halfMm: number, lengthMm = 400): Change => ({ weld: weld(lengthMm), stations: oneBadStretch(['throatMm'], 7.071, 6.971, halfMm, lengthMm) })
    const apart = (gap: number): Change => ({ weld: weld(400), stations: twoBadStretches('throatMm', 7.071, 6.971, gap, 400) })
    return [
      rule.accepts(`t ${thicknessMm}, 25 mm long`, long(12.5)), rule.rejects(`t ${thicknessMm}, 25.05 mm long`, long(12.525)),
      rule.accepts(`t ${thicknessMm}, 25 mm in any 100 mm`, apart(75)), rule.rejects(`t ${thicknessMm}, 25.05 mm in some 100 mm`, apart(74.95)),
      rule.accepts(`t ${thicknessMm}, a quarter of an 80 mm weld`, long(10, 80)), rule.rejects(`t ${thicknessMm}, more than a quarter`, long(10.2, 80)),
      rule.accepts(`t ${thicknessMm}, nominal everywhere`, { weld: weld(400), at: { throatMm: 7.071 } }),
      rule.rejects(`t ${thicknessMm}, a hair under everywhere`, { weld: weld(400), at: { throatMm: 7.061 } }),
    ]
  }
  const thin: readonly LimitCase[] = level === 'c'
    ? rule.edge('thin, short by', short(2, 4, 2.8284), 0.2, 0.21)
    : rule.edge('thin, short by 0.2 + 0.1 a', short(2, 4, 2.8284), 0.48284, 0.49284)
  return [
    ...thin,
    ...rule.edge('short by 0.3 + 0.1 a', short(10, 8, 5.6568), 0.86568, 0.87568),
    ...rule.edge('short by at most', short(10, 30, 21.213), level === 'c' ? 1 : 2, level === 'c' ? 1.01 : 2.01),
    rule.rejects('at 3 mm the thin limit', short(3, 8, 5.6568)(0.8)),
    rule.accepts('just over 3 mm the other', short(3.05, 8, 5.6568)(0.8)),
    ...lengths(2), ...lengths(10), ...grooves,
  ]
}

function excessThroats(of: Of, level: Level): readonly LimitCase[] {
  const source = level === 'c' ? 'ISO 5817 level C quoted in a public finite-element script' : SHEETS[level]
  const rule = of('5214', source)
  const throat = (nominalLegMm: number) => (throatMm: number): Change => ({ weld: { nominalLegMm }, at: { throatMm } })
  const groove = rule.ignores('a groove', { weld: GROOVE, reason: 'fillet-only' })
  if (level === 'd') return [rule.ignores('permitted', throat(8)(20)), groove]
  const [on, cap] = level === 'c' ? [7.071 + 2.4142, 21.213 + 4] : [7.071 + 2.06065, 21.213 + 3]
  return [groove, ...rule.edge('throat of a 10 mm leg', throat(10), on, on + PAST), ...rule.edge('throat of a 30 mm leg', throat(30), cap, cap + PAST)]
}

function overlaps(of: Of, level: Level): readonly LimitCase[] {
  if (level !== 'd') return any(of, '506', SHEETS[level], 'overlap')
  const source = 'Public text that is no proper source'
  const stations: readonly Station[] = [{ atMm: 100, widthMm: 12 }, { atMm: 300, widthMm: 10 }]
  return [
    ...of('506', source).edge('0.2 of the narrowest width', (heightMm) => ({ stations, indications: [{ kind: 'overlap', atMm: 50, heightMm }] }), 2, 2.01),
    of('506', source).accepts('looked for and none seen, no width read', { stations: [{ atMm: 100 }] }),
  ]
}

function asymmetry(of: Of, level: Level): readonly LimitCase[] {
  const source = level === 'd' ? 'Public text that is no proper source' : SHEETS[level]
  const on = { b: 1.5 + 1.06065, c: 2 + 1.06065, d: 2 + 1.4142 }[level]
  return [
    ...of('512', source).edge('legs apart', (by) => ({ weld: { nominalLegMm: 10 }, at: { legAMm: 12, legBMm: 12 - by } }), on, on + PAST),
    of('512', source).ignores('a groove', { weld: GROOVE }),
  ]
}

function allowedAtD(of: Of, level: Level, rule: string, kind: Indication['kind']): readonly LimitCase[] {
  return level === 'd' ? [of(rule, MEMORY).ignores('permitted', seen([{ kind, atMm: 5 }]))] : any(of, rule, MEMORY, kind)
}

/** All cases of an ISO 5817 set in which each item is judged at its own level. */
export function isoCasesFor(set: string, levelOf: (item: string) => Level): readonly LimitCase[] {
  const of: Of = (rule, source) => casesOf(set, rule, source)
  const k = { b: 0.1, c: 0.15, d: 0.25 }
  const start = 'BS EN ISO 5817:2014 Table 1, first rows'
  const [excess, convexity] = [levelOf('502'), levelOf('503')]
  return [
    ...any(of, '100', start, 'crack'), ...any(of, '104', start, 'crater-crack'), ...any(of, '401', start, 'lack-of-fusion'),
    of('401', start).rejects('fusion not complete', { fusionComplete: false }),
    ...pores(of, levelOf('2017')), ...pipes(of, levelOf('2025')), ...undercuts(of, levelOf('5011')),
    ...faces(of, '502', SHEETS[excess], GROOVE, 'reinforcementMm', k[excess], { b: 5, c: 7, d: 10 }[excess]),
    ...faces(of, '503', SHEETS[convexity], {}, 'convexityMm', k[convexity], { b: 3, c: 4, d: 5 }[convexity]),
    of('502', SHEETS[excess]).ignores('a fillet', {}), of('503', SHEETS[convexity]).ignores('a groove', { weld: GROOVE }),
    ...overlaps(of, levelOf('506')), ...misalignment(of, levelOf('507')), ...any(of, '510', SHEETS.b, 'burn-through'), ...roots(of, levelOf('511')),
    ...asymmetry(of, levelOf('512')), ...allowedAtD(of, levelOf('517'), '517', 'poor-restart'), ...throats(of, levelOf('5213')),
    ...excessThroats(of, levelOf('5214')), ...allowedAtD(of, levelOf('601'), '601', 'arc-strike'),
    ...rootPenetration(of, levelOf('4021')), ...shrinkageGrooves(of, levelOf('5013')), ...excessPenetration(of, levelOf('504')),
    ...toeAngles(of, levelOf('505')), ...rootPores(of, levelOf('516')), ...filletGaps(of, levelOf('617')),
    of('602', MEMORY).ignores('spatter depends on the application', seen([{ kind: 'spatter', atMm: 5 }])),
  ]
}

export const isoCases: readonly LimitCase[] = [
  ...(['b', 'c', 'd'] as const).flatMap((level) => isoCasesFor(`iso5817-${level}`, () => level)),
  // ISO 9606-1 clause 7: level B, but 502, 503, 5214 and 504 at level C.
  ...isoCasesFor('iso9606-1', (item) => (['502', '503', '5214', '504'].includes(item) ? 'c' : 'b')),
]

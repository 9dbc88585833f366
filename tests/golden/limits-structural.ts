// AWS D1.1 visual acceptance, Table 6.1 (8.1 from 2020), and its profile clause. The numbers below were typed from the sources named
// beside them, once in inches and once in millimetres, and not from the criteria they check.
import type { Indication, Weld } from '@/lib/scoring/types'
import { casesOf, GROOVE, oneBadStretch, type Change, type LimitCase } from './limits-case'

const TABLE = 'AWS D1.1:2000 Table 6.1, one-page scan'
const TABLE_2004 = 'AWS D1.1/D1.1M:2004 Table 6.1 text'
const CYCLIC = 'AWS D1.1 Table 6.1 item 7B and 8B, 8C as quoted in a bilingual inspection procedure'
const PROFILE = 'AWS D1.1 profile table: first row from study notes, the rest from memory'
const REINFORCEMENT = 'AWS D1.1 profile clause: 1/8 in (3 mm) quoted in an inspection procedure, the rest from memory'

/** Lengths in the column's own unit. */
export type Book = {
  readonly system: 'us' | 'si'
  readonly unit: number
  /** Half a gauge step: 1/128 in or 0.05 mm. */
  readonly half: number
  readonly convexity: readonly [narrow: number, narrowMax: number, wide: number, middleMax: number, wideMax: number]
  readonly reinforcement: readonly [thin: number, thinMax: number, medium: number, mediumMax: number, thickMax: number]
  readonly legs: readonly [small: number, smallShort: number, medium: number, mediumShort: number, large: number, largeShort: number]
  readonly thick: number
  readonly undercut: number
  readonly deeper: number
  readonly deeperLength: number
  readonly window: number
  readonly tension: number
  readonly inch: number
  readonly counted: number
  readonly perInch: number
  readonly perFoot: number
  readonly spacing: number
  readonly diameter: number
}

export const INCH_BOOK: Book = {
  system: 'us', unit: 25.4, half: 1 / 128,
  convexity: [5 / 16, 1 / 16, 1, 1 / 8, 3 / 16], reinforcement: [1, 1 / 8, 2, 3 / 16, 1 / 4],
  legs: [3 / 16, 1 / 16, 1 / 4, 3 / 32, 5 / 16, 1 / 8], thick: 1, undercut: 1 / 32, deeper: 1 / 16, deeperLength: 2, window: 12, tension: 0.01,
  inch: 1, counted: 1 / 32, perInch: 3 / 8, perFoot: 3 / 4, spacing: 4, diameter: 3 / 32,
}
export const METRIC_BOOK: Book = {
  system: 'si', unit: 1, half: 0.05,
  convexity: [8, 2, 25, 3, 5], reinforcement: [25, 3, 50, 5, 6],
  legs: [5, 2, 6, 2.5, 8, 3], thick: 25, undercut: 1, deeper: 2, deeperLength: 50, window: 300, tension: 0.25,
  inch: 25, counted: 1, perInch: 10, perFoot: 20, spacing: 100, diameter: 2.5,
}

export type Rules = (rule: string, source: string) => ReturnType<typeof casesOf>

export const seen = (indications: readonly Indication[], weld: Partial<Weld> = {}): Change => ({ indications, weld })

export function soundnessCases(of: Rules, source: string): readonly LimitCase[] {
  const [crack, fusion, crater] = [of('crack', source), of('fusion', source), of('crater', source)]
  return [
    crack.accepts('none', {}),
    crack.rejects('a crack', seen([{ kind: 'crack', atMm: 7 }])),
    crack.rejects('a crater crack', seen([{ kind: 'crater-crack', atMm: 7 }])),
    fusion.accepts('complete', {}),
    fusion.rejects('not complete', { fusionComplete: false }),
    fusion.rejects('lack of fusion seen', seen([{ kind: 'lack-of-fusion', atMm: 7 }])),
    fusion.rejects('burned through', seen([{ kind: 'burn-through', atMm: 7 }])),
    crater.accepts('filled', {}),
    crater.rejects('not filled', { cratersFilled: false }),
    crater.rejects('a pipe in it', seen([{ kind: 'crater-pipe', atMm: 7 }])),
  ]
}

export function convexityCases(of: Rules, { unit, half, convexity: [narrow, narrowMax, wide, middleMax, wideMax] }: Book): readonly LimitCase[] {
  const rule = of('convexity', PROFILE)
  const face = (width: number, height: number): Change => ({ at: { widthMm: width * unit, convexityMm: height * unit } })
  return [
    ...rule.edge('narrow face', (height) => face(narrow, height), narrowMax, narrowMax + half),
    rule.accepts('just wider than narrow', face(narrow + half, middleMax)),
    ...rule.edge('middle face', (height) => face((narrow + wide) / 2, height), middleMax, middleMax + half),
    rule.rejects('just under wide', face(wide - half, wideMax)),
    ...rule.edge('wide face', (height) => face(wide, height), wideMax, wideMax + half),
    rule.ignores('a groove', { weld: GROOVE }),
  ]
}

export function reinforcementCases(of: Rules, { unit, half, reinforcement: [thin, thinMax, medium, mediumMax, thickMax] }: Book): readonly LimitCase[] {
  const rule = of('reinforcement', REINFORCEMENT)
  const face = (thickness: number, height: number): Change => ({ weld: { ...GROOVE, thicknessMm: thickness * unit }, at: { reinforcementMm: height * unit } })
  return [
    ...rule.edge('thin plate', (height) => face(thin, height), thinMax, thinMax + half),
    rule.accepts('just over thin', face(thin + half, mediumMax)),
    ...rule.edge('medium plate', (height) => face(medium, height), mediumMax, mediumMax + half),
    rule.accepts('just over medium', face(medium + half, thickMax)),
    ...rule.edge('thick plate', (height) => face(1.5 * medium, height), thickMax, thickMax + half),
    rule.ignores('a fillet', {}),
  ]
}

function legCases(of: Rules, { unit, half, legs: [small, smallShort, medium, mediumShort, large, largeShort] }: Book): readonly LimitCase[] {
  const rule = of('leg-size', TABLE_2004)
  /** One short station standing for `share` of a 400 mm weld. */
  const short = (nominal: number, by: number, share = 0.1): Change => ({
    weld: { nominalLegMm: nominal * unit },
    stations: oneBadStretch(['legAMm', 'legBMm'], nominal * unit, (nominal - by) * unit, (400 * share) / 2, 400),
  })
  const all = (legMm: number): Change => ({ weld: { nominalLegMm: large * unit }, at: { legAMm: legMm, legBMm: legMm + 1 } })
  return [
    ...rule.edge('small fillet short by', (by) => short(small, by), smallShort, smallShort + half),
    ...rule.edge('medium fillet short by', (by) => short(medium, by), mediumShort, mediumShort + half),
    ...rule.edge('large fillet short by', (by) => short(large, by), largeShort, largeShort + half),
    rule.rejects('just under medium, short by the medium allowance', short(medium - half, mediumShort)),
    rule.rejects('just under large, short by the large allowance', short(large - half, largeShort)),
    rule.accepts('a tenth of the length short', short(large, smallShort, 0.1)),
    rule.rejects('a little more than a tenth short', short(large, smallShort, 0.105)),
    rule.accepts('nominal everywhere', all(large * unit)),
    rule.rejects('a hair under nominal everywhere', all(large * unit - 0.04)),
    rule.ignores('a groove', { weld: GROOVE }),
  ]
}

export const run = (book: Book, depth: number, from: number, length: number, toe: 'A' | 'B' = 'A'): Indication =>
  ({ kind: 'undercut', atMm: from * book.unit, lengthMm: length * book.unit, depthMm: depth * book.unit, toe })

function staticUndercutCases(of: Rules, book: Book): readonly LimitCase[] {
  const rule = of('undercut', TABLE)
  const { unit, half, thick, undercut, deeper, deeperLength, window } = book
  const plate = (thickness: number): Partial<Weld> => ({ thicknessMm: thickness * unit, lengthMm: 2 * window * unit })
  const thin = (...runs: Indication[]) => seen(runs, plate(thick / 2))
  const long = 3 * deeperLength
  const between = (undercut + deeper) / 2
  /** Two deep runs, each of the whole allowance, so far apart that a window holds just the allowance of them. */
  const apart = (gap: number) => thin(run(book, between, 1, deeperLength), run(book, between, 1 + deeperLength + gap, deeperLength))
  return [
    ...rule.edge('any length, deep', (depth) => thin(run(book, depth, 1, long)), undercut, undercut + half),
    ...rule.edge('short, deep', (depth) => thin(run(book, depth, 1, deeperLength / 2)), deeper, deeper + half),
    ...rule.edge('the length of the deeper undercut', (length) => thin(run(book, between, 1, length)), deeperLength, deeperLength + half),
    rule.accepts('two deep runs that leave just the allowance in any window', apart(window - deeperLength)),
    rule.rejects('the same half a step nearer', apart(window - deeperLength - half)),
    rule.rejects('the two toes add up', thin(run(book, between, 1, 0.6 * deeperLength, 'A'), run(book, between, 1, 0.6 * deeperLength, 'B'))),
    rule.rejects('just under thick, long', seen([run(book, between, 1, long)], plate(thick - half))),
    ...rule.edge('thick plate, any length, deep', (depth) => seen([run(book, depth, 1, long)], plate(thick)), deeper, deeper + half),
  ]
}

export const pore = (book: Book, at: number, diameter: number): Indication => ({ kind: 'pore', atMm: at * book.unit, diameterMm: diameter * book.unit })

function poreSumCases(of: Rules, book: Book, source: string, extra: Partial<Weld>): readonly LimitCase[] {
  const { unit, half, inch, counted, perInch, perFoot, window } = book
  const [each, foot] = [of('porosity-per-inch', source), of('porosity-per-12-inches', source)]
  const weld: Partial<Weld> = { lengthMm: 2 * window * unit, ...extra }
  const pores = (...list: readonly (readonly [at: number, diameter: number])[]): Change =>
    seen(list.map(([at, diameter]) => pore(book, at, diameter)), weld)
  const third = perFoot / 3
  return [
    ...each.edge('two pores in an inch', (sum) => pores([3, perInch / 2], [3 + inch / 2, sum - perInch / 2]), perInch, perInch + half),
    each.rejects('an inch apart', pores([3, perInch], [3 + inch, perInch])),
    each.accepts('half a step more than an inch apart', pores([3, perInch], [3 + inch + half, perInch])),
    each.rejects('one just large enough to count', pores([3, perInch], [3 + inch / 2, counted])),
    each.accepts('one just too small to count', pores([3, perInch], [3 + inch / 2, counted - half])),
    ...foot.edge('three pores in a foot', (sum) => pores([1, third], [1 + window / 3, third], [1 + window / 2, sum - 2 * third]), perFoot, perFoot + half),
    foot.rejects('four pores, first and last a foot apart', pores([1, third], [1 + window / 3, third], [1 + window / 2, third], [1 + window, third])),
    foot.accepts('half a step more than a foot apart', pores([1, third], [1 + window / 3, third], [1 + window / 2, third], [1 + window + half, third])),
    foot.rejects('one just large enough to count', pores([1, perFoot], [1 + window / 2, counted])),
    foot.accepts('one just too small to count', pores([1, perFoot], [1 + window / 2, counted - half])),
  ]
}

const TENSION_BUTT: Partial<Weld> = { ...GROOVE, completePenetration: true, transverseToTension: true }

function acrossTensionCases(of: Rules, source: string): readonly LimitCase[] {
  const rule = of('porosity-across-tension', source)
  return [
    rule.accepts('none', { weld: TENSION_BUTT }),
    rule.rejects('one pore', seen([{ kind: 'pore', atMm: 5, diameterMm: 0.1 }], TENSION_BUTT)),
    rule.ignores('a groove not across tension', { weld: { ...GROOVE, completePenetration: true } }),
  ]
}

export const overlapCases = (of: Rules): readonly LimitCase[] => [
  of('overlap', PROFILE).accepts('none', {}),
  of('overlap', PROFILE).rejects('any', seen([{ kind: 'overlap', atMm: 5 }])),
]

function staticCases(book: Book): readonly LimitCase[] {
  const of: Rules = (rule, source) => casesOf(`structural-static.${book.system}`, rule, source)
  return [
    ...soundnessCases(of, TABLE), ...convexityCases(of, book), ...overlapCases(of), ...reinforcementCases(of, book), ...legCases(of, book),
    ...staticUndercutCases(of, book), ...poreSumCases(of, book, 'AWS D1.1 Table 6.1 item 8A quoted in a forum of engineers', {}),
    ...acrossTensionCases(of, TABLE),
    ...['porosity-per-inch', 'porosity-per-12-inches'].flatMap((rule) => [
      of(rule, TABLE).ignores('a butt weld across tension', { weld: TENSION_BUTT }),
      of(rule, TABLE).accepts('a butt weld along tension', { weld: { ...TENSION_BUTT, transverseToTension: false } }),
      of(rule, TABLE).accepts('a weld across tension, but not through the plate', { weld: { ...TENSION_BUTT, completePenetration: false } }),
      of(rule, TABLE).accepts('a fillet across tension', { weld: { completePenetration: true, transverseToTension: true } }),
    ]),
  ]
}

function cyclicUndercutCases(of: Rules, book: Book): readonly LimitCase[] {
  const rule = of('undercut', CYCLIC)
  const { half, undercut, tension } = book
  return [
    ...rule.edge('across tension, deep', (depth) => seen([run(book, depth, 1, 1)], { transverseToTension: true }), tension, tension + half),
    ...rule.edge('other cases, deep', (depth) => seen([run(book, depth, 1, 1)]), undercut, undercut + half),
  ]
}

function fewPoreCases(of: Rules, book: Book, weld: Partial<Weld>): readonly LimitCase[] {
  const { half, spacing, diameter, counted } = book
  const [frequency, largest] = [of('porosity-frequency', CYCLIC), of('porosity-diameter', CYCLIC)]
  const two = (gap: number) => seen([pore(book, 1, counted), pore(book, 1 + gap, counted)], weld)
  return [
    frequency.accepts('one pore', seen([pore(book, 1, counted)], weld)),
    frequency.rejects('two within 4 in (100 mm)', two(spacing)),
    frequency.accepts('two half a step further apart', two(spacing + half)),
    ...largest.edge('a pore', (size) => seen([pore(book, 1, size)], weld), diameter, diameter + half),
  ]
}

function cyclicCases(book: Book): readonly LimitCase[] {
  const of: Rules = (rule, source) => casesOf(`structural-cyclic.${book.system}`, rule, source)
  return [
    ...soundnessCases(of, TABLE), ...convexityCases(of, book), ...overlapCases(of), ...reinforcementCases(of, book), ...legCases(of, book),
    ...cyclicUndercutCases(of, book), ...poreSumCases(of, book, CYCLIC, { stiffenerToWeb: true }),
    ...fewPoreCases(of, book, {}), ...fewPoreCases(of, book, GROOVE), ...acrossTensionCases(of, CYCLIC),
    ...['porosity-per-inch', 'porosity-per-12-inches'].flatMap((rule) => [
      of(rule, CYCLIC).ignores('a fillet that joins no stiffener', {}),
      of(rule, CYCLIC).ignores('a groove', { weld: { ...GROOVE, stiffenerToWeb: true } }),
    ]),
    ...['porosity-frequency', 'porosity-diameter'].flatMap((rule) => [
      of(rule, CYCLIC).ignores('a stiffener', { weld: { stiffenerToWeb: true } }),
      of(rule, CYCLIC).ignores('a butt weld across tension', { weld: TENSION_BUTT }),
      of(rule, CYCLIC).accepts('a butt weld along tension', { weld: { ...TENSION_BUTT, transverseToTension: false } }),
      of(rule, CYCLIC).accepts('a weld across tension, but not through the plate', { weld: { ...TENSION_BUTT, completePenetration: false } }),
    ]),
  ]
}

export const structuralCases: readonly LimitCase[] = [INCH_BOOK, METRIC_BOOK].flatMap((book) => [
  ...staticCases(book), ...cyclicCases(book),
])

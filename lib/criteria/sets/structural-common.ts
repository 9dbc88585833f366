import { below, fixed, inches, otherwise, table, times, upTo } from '../limits'
import { SCALE, YES_OR_NO } from '../readiness-scale'
import type { Limit, Rule } from '../types'
import { profile, visual } from './structural-sources'

/**
 * The lengths of a dual-unit structural code in one of its two columns, in millimetres. The columns are not conversions of each
 * other: a program works in one.
 */
export type Column = {
  readonly system: 'us' | 'si'
  /** Fillet convexity by width of face. */
  readonly convexity: Limit
  /** Groove reinforcement by plate thickness. */
  readonly reinforcement: Limit
  /** How much under the nominal leg, by nominal leg. */
  readonly shortfall: Limit
  /** Plates this thick and over are the thick ones of the undercut rule. */
  readonly thickPlate: number
  /** The ordinary undercut limit, and the larger one for short lengths and thick plates. */
  readonly undercut: number
  readonly deepUndercut: number
  readonly deepUndercutLength: number
  readonly undercutInTension: number
  readonly foot: number
  readonly inch: number
  readonly poreCounted: number
  readonly poresPerInch: number
  readonly poresPerFoot: number
  readonly poreSpacing: number
  readonly poreDiameter: number
}

export const US: Column = {
  system: 'us',
  convexity: table('width', upTo(inches(5 / 16), inches(1 / 16)), below(inches(1), inches(1 / 8)), otherwise(inches(3 / 16))),
  reinforcement: table('thickness', upTo(inches(1), inches(1 / 8)), upTo(inches(2), inches(3 / 16)), otherwise(inches(1 / 4))),
  shortfall: table('nominal-leg', below(inches(1 / 4), inches(1 / 16)), below(inches(5 / 16), inches(3 / 32)), otherwise(inches(1 / 8))),
  thickPlate: inches(1),
  undercut: inches(1 / 32),
  deepUndercut: inches(1 / 16),
  deepUndercutLength: inches(2),
  undercutInTension: inches(0.01),
  foot: inches(12),
  inch: inches(1),
  poreCounted: inches(1 / 32),
  poresPerInch: inches(3 / 8),
  poresPerFoot: inches(3 / 4),
  poreSpacing: inches(4),
  poreDiameter: inches(3 / 32),
}

export const SI: Column = {
  system: 'si',
  convexity: table('width', upTo(8, 2), below(25, 3), otherwise(5)),
  reinforcement: table('thickness', upTo(25, 3), upTo(50, 5), otherwise(6)),
  shortfall: table('nominal-leg', below(6, 2), below(8, 2.5), otherwise(3)),
  thickPlate: 25,
  undercut: 1,
  deepUndercut: 2,
  deepUndercutLength: 50,
  undercutInTension: 0.25,
  foot: 300,
  inch: 25,
  poreCounted: 1,
  poresPerInch: 10,
  poresPerFoot: 20,
  poreSpacing: 100,
  poreDiameter: 2.5,
}

/** A groove weld through the whole plate, across the tension: it may have no surface porosity at all. */
export const TENSION_BUTT = { weld: 'groove', completePenetration: true, transverseToTension: true } as const

/** Items 1 to 4: the same for every loading. */
export function soundness(): readonly Rule[] {
  return [
    {
      id: 'crack', kind: 'absent', of: ['crack', 'crater-crack'],
      source: visual('1', 'confirmed', 'Read in the 2000 and 2004 editions.'), weight: 15, readiness: YES_OR_NO,
    },
    {
      id: 'fusion', kind: 'attribute', answer: 'fusionComplete', of: [], ifSeen: ['lack-of-fusion', 'burn-through'],
      source: visual('2', 'confirmed', 'Read in the 2000 and 2004 editions. A hole burned through, where seen, is taken as no fusion there.'), weight: 15, readiness: YES_OR_NO,
    },
    {
      id: 'crater', kind: 'attribute', answer: 'cratersFilled', of: [], ifSeen: ['crater-pipe'],
      source: visual('3', 'confirmed', 'Read in the 2000 and 2004 editions. The exemption of ends of intermittent fillets is not applied. A pipe left in a crater is taken as not filled.'),
      weight: 10, readiness: YES_OR_NO,
    },
  ]
}

/** Item 4, the profile clause. */
export function profiles(column: Column): readonly Rule[] {
  return [
    {
      id: 'convexity', when: { weld: 'fillet' }, kind: 'reading-range', reading: 'convexity', min: null, max: column.convexity,
      source: profile(', fillet convexity by width of face', 'memory', 'The first row was read in study notes; the others are from memory.'), weight: 10, readiness: SCALE.convexity,
    },
    {
      id: 'overlap', kind: 'absent', of: ['overlap'],
      source: profile('', 'memory', 'No overlap of any size.'), weight: 5, readiness: YES_OR_NO,
    },
    {
      id: 'reinforcement', when: { weld: 'groove' }, kind: 'reading-range', reading: 'reinforcement', min: null, max: column.reinforcement,
      source: profile(', reinforcement of butt and corner joints by thickness', 'memory', 'The first row, for plates up to 1 in (25 mm), was read in an inspection procedure; the others are from memory.'),
      weight: 10, readiness: SCALE.reinforcement,
    },
  ]
}

/** Item 6: an undersized fillet is tolerated by a little, over a tenth of its length. */
export function undersize(column: Column): Rule {
  return {
    id: 'leg-size', when: { weld: 'fillet' }, kind: 'reading-allowance', reading: 'shortest-leg', side: 'below',
    nominal: times(1, 'nominal-leg'), beyond: column.shortfall, over: { per: 'weld', share: 0.1 },
    source: visual('6', 'confirmed', 'Read in the 2000 and 2004 editions. Between the sizes of the table the smaller shortfall is used. The rule for the ends of web-to-flange welds is not applied.'),
    weight: 15, readiness: SCALE.leg,
  }
}

export const flatUndercut = (mm: number) => ({ kind: 'largest-size', of: ['undercut'], size: 'depth', max: fixed(mm) } as const)

/** No surface pore at all in a butt weld across the tension. */
export function poresAcrossTension(item: string, status: 'confirmed' | 'secondary'): Rule {
  return {
    id: 'porosity-across-tension', when: TENSION_BUTT, kind: 'absent', of: ['pore'],
    source: visual(item, status), weight: 10, readiness: YES_OR_NO,
  }
}

/** Sums of pore diameters per inch and per foot. */
export function poreSums(column: Column, item: string, status: 'confirmed' | 'secondary', unlessOrWhen: Pick<Rule, 'when' | 'unless'>): readonly Rule[] {
  const source = visual(item, status, 'Pores under 1/32 in (1 mm) are not counted. Only surface pores can be judged by eye.')
  const sum = { kind: 'window-sum', of: ['pore'], size: 'diameter', countFromMm: column.poreCounted } as const
  return [
    { id: 'porosity-per-inch', ...unlessOrWhen, ...sum, windowMm: column.inch, max: fixed(column.poresPerInch), source, weight: 5, readiness: SCALE.poresPerInch },
    { id: 'porosity-per-12-inches', ...unlessOrWhen, ...sum, windowMm: column.foot, max: fixed(column.poresPerFoot), source, weight: 5, readiness: SCALE.poresPerFoot },
  ]
}

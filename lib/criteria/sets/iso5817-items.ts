import type { Source, SourceStatus } from '../../source'
import { degrees, fixed, linear, onTopOf, times } from '../limits'
import { SCALE, YES_OR_NO } from '../readiness-scale'
import type { Allowance, Check, Condition, Limit, Readiness, Reading, Rule } from '../types'

/** Quality level of ISO 5817: B stringent, C intermediate, D moderate. */
export type Level = 'b' | 'c' | 'd'

/**
 * The surface and geometry items of ISO 5817, by their ISO 6520-1 numbers. 5011 stands for 5012 too, 511 for 509, and 507 for plates
 * (5071): pipes (5072) are not welded here. Roots, toes and gaps are judged where they were recorded. Table 1 divides most items at a
 * thickness of 3 mm.
 */
const THIN: Condition = { thickness: { upTo: 3 } }

/** A short imperfection: at most 25 mm long in any 100 mm, or a quarter of a weld shorter than that. */
const SHORT: Allowance = { per: 'window', lengthMm: 25, windowMm: 100, shareIfShorter: 0.25 }

const WEAK = 'Read only in public text that is no proper source.'
const RECORDED = 'Judged where it was recorded.'
const SHORT_NOTE = 'A short imperfection is at most 25 mm in any 100 mm, or a quarter of a shorter weld: that definition is from memory.'

function source(item: string, status: SourceStatus, note?: string): Source {
  return { title: 'ISO 5817', clause: `Table 1, ISO 6520-1 no. ${item}`, status, ...(note !== undefined && { note }) }
}

type Attributes = { readonly id: string; readonly weight: number; readonly readiness: Readiness; readonly source: Source; readonly when?: Condition }

const isNotPermitted = (check: Check): boolean =>
  check.kind === 'absent' || (check.kind === 'reading-range' && check.max?.form === 'fixed' && check.max.mm === 0)

/** Where nothing is permitted there is no margin to learn from, only yes or no. */
const readinessOf = (item: Attributes, check: Check): Readiness => (isNotPermitted(check) ? YES_OR_NO : item.readiness)

/** One item with one limit for all plates. */
function undivided(item: Attributes, check: Check): readonly Rule[] {
  return [{ ...item, ...check, readiness: readinessOf(item, check) }]
}

/** One item whose limit changes at 3 mm: a rule for thin plates, and one for all others. */
function divided(item: Attributes, thin: Check, thick: Check, thinSource = item.source): readonly Rule[] {
  return [
    { ...item, ...thin, when: { ...item.when, ...THIN }, source: thinSource, readiness: readinessOf(item, thin) },
    ...undivided(item, thick),
  ]
}

const none = (...of: Extract<Check, { kind: 'absent' }>['of']): Check => ({ kind: 'absent', of })
const poresUpTo = (max: Limit): Check => ({ kind: 'largest-size', of: ['pore'], size: 'diameter', max })
const pipesUpTo = (max: Limit): Check => ({ kind: 'largest-size', of: ['crater-pipe'], size: 'largest', max })
const undercutUpTo = (max: Limit): Check => ({ kind: 'largest-size', of: ['undercut'], size: 'depth', max })
const shortUndercut = (max: Limit): Check => ({ kind: 'size-allowance', of: ['undercut'], size: 'depth', max: null, allowed: { max, over: SHORT } })
const shortThroat = (beyond: Limit): Check =>
  ({ kind: 'reading-allowance', reading: 'throat', side: 'below', nominal: times(1, 'nominal-throat'), beyond, over: SHORT })
const FULL_THROAT: Check = { kind: 'reading-range', reading: 'throat', min: times(1, 'nominal-throat'), max: null }

type Optional = Exclude<Reading, 'width' | 'shortest-leg' | 'leg-difference' | 'throat' | 'convexity' | 'reinforcement' | 'toe-angle'>
const recorded = (reading: Optional, max: Limit): Check => ({ kind: 'reading-range', reading, min: null, max, optional: true })
const shortRecorded = (reading: Optional, beyond: Limit): Check =>
  ({ kind: 'reading-allowance', reading, side: 'above', nominal: fixed(0), beyond, over: SHORT, optional: true })

const toeFrom = (angle: number): Check => ({ kind: 'reading-range', reading: 'toe-angle', min: degrees(angle), max: null, optional: true })

const PERMITTED: Check = { kind: 'not-judged', reason: 'permitted' }

type Item = (level: Level) => readonly Rule[]

/** Pairs, not an object: the keys of an object that look like numbers lose their order. */
const ITEMS: readonly (readonly [id: string, item: Item])[] = [
  ['100', () => [{ id: '100', ...none('crack'), source: source('100', 'confirmed'), weight: 15, readiness: YES_OR_NO }]],

  ['104', () => [{ id: '104', ...none('crater-crack'), source: source('104', 'confirmed'), weight: 10, readiness: YES_OR_NO }]],

  ['2017', (level) => {
    const item = { id: '2017', source: source('2017', 'confirmed'), weight: 5, readiness: SCALE.pore }
    if (level === 'b') return undivided(item, none('pore'))
    if (level === 'c') return divided(item, none('pore'), poresUpTo(linear('nominal-size', 0.2, 0, 2)))
    return divided(item, poresUpTo(times(0.3, 'nominal-size')), poresUpTo(linear('nominal-size', 0.3, 0, 3)))
  }],

  ['2025', (level) => {
    const item = { id: '2025', source: source('2025', 'confirmed'), weight: 5, readiness: SCALE.pipe }
    if (level === 'b') return undivided(item, none('crater-pipe'))
    if (level === 'd') return undivided(item, pipesUpTo(linear('thickness', 0.2, 0, 2)))
    return divided(item, none('crater-pipe'), pipesUpTo(linear('thickness', 0.1, 0, 1)))
  }],

  ['401', () => [{
    id: '401', kind: 'attribute', answer: 'fusionComplete', of: [], ifSeen: ['lack-of-fusion'], source: source('401', 'confirmed'), weight: 15, readiness: YES_OR_NO,
  }]],

  ['4021', (level) => undivided(
    { id: '4021', when: { weld: 'groove' }, source: source('4021', 'confirmed', level === 'd' ? `${RECORDED} ${SHORT_NOTE}` : RECORDED), weight: 10, readiness: SCALE.root },
    level === 'd' ? shortRecorded('root-shortfall', linear('thickness', 0.2, 0, 2)) : recorded('root-shortfall', fixed(0)))],

  ['5011', (level) => {
    const item = { id: '5011', source: source('5011', 'secondary', 'With a smooth transition to the plate.'), weight: 15, readiness: SCALE.undercut }
    return divided(item,
      { b: none('undercut'), c: shortUndercut(times(0.1, 'thickness')), d: shortUndercut(times(0.2, 'thickness')) }[level],
      { b: undercutUpTo(linear('thickness', 0.05, 0, 0.5)), c: undercutUpTo(linear('thickness', 0.1, 0, 0.5)), d: undercutUpTo(linear('thickness', 0.2, 0, 1)) }[level],
      level === 'b' ? item.source : source('5011', 'secondary', SHORT_NOTE))
  }],

  ['5013', (level) => {
    const item = { id: '5013', when: { weld: 'groove' }, source: source('5013', 'secondary', `${RECORDED} ${SHORT_NOTE}`), weight: 5, readiness: SCALE.root } as const
    if (level === 'b') return divided(item, recorded('shrinkage-groove', fixed(0)), shortRecorded('shrinkage-groove', linear('thickness', 0.05, 0, 0.5)))
    if (level === 'c') return undivided(item, shortRecorded('shrinkage-groove', linear('thickness', 0.1, 0, 1)))
    return divided(item, recorded('shrinkage-groove', linear('thickness', 0.1, 0.2, null)), shortRecorded('shrinkage-groove', linear('thickness', 0.2, 0, 2)),
      source('5013', 'secondary', `${RECORDED} Of any length; later editions may allow it only as a short imperfection.`))
  }],

  ['502', (level) => [{
    id: '502', when: { weld: 'groove' }, kind: 'reading-range', reading: 'reinforcement', min: null,
    max: { b: linear('width', 0.1, 1, 5), c: linear('width', 0.15, 1, 7), d: linear('width', 0.25, 1, 10) }[level],
    source: source('502', 'secondary'), weight: 10, readiness: SCALE.reinforcement,
  }]],

  ['503', (level) => [{
    id: '503', when: { weld: 'fillet' }, kind: 'reading-range', reading: 'convexity', min: null,
    max: { b: linear('width', 0.1, 1, 3), c: linear('width', 0.15, 1, 4), d: linear('width', 0.25, 1, 5) }[level],
    source: source('503', 'secondary'), weight: 10, readiness: SCALE.convexity,
  }]],

  ['504', (level) => {
    const note = `${RECORDED} Held against the width of the metal on the root side.`
    const item = { id: '504', when: { weld: 'groove' }, source: source('504', 'secondary', note), weight: 5, readiness: SCALE.penetration } as const
    return divided(item,
      recorded('penetration', linear('root-width', { b: 0.1, c: 0.3, d: 0.6 }[level], 1, null)),
      recorded('penetration', { b: linear('root-width', 0.2, 1, 3), c: linear('root-width', 0.6, 1, 4), d: linear('root-width', 1, 1, 5) }[level]))
  }],

  ['505', (level) => {
    const weak = source('505', 'memory', `${WEAK} ${RECORDED}`)
    const read = source('505', 'secondary', RECORDED)
    const item = { id: '505', weight: 5, readiness: SCALE.angle }
    if (level === 'd') return undivided({ ...item, source: weak }, toeFrom(90))
    return [
      ...undivided({ ...item, when: { weld: 'groove' }, source: read }, toeFrom(level === 'b' ? 150 : 110)),
      ...undivided({ ...item, source: level === 'b' ? weak : read }, toeFrom(level === 'b' ? 110 : 100)),
    ]
  }],

  ['506', (level) => [level === 'd'
    ? {
        id: '506', kind: 'largest-size', of: ['overlap'], size: 'largest', max: times(0.2, 'width'),
        source: source('506', 'memory', `${WEAK} Held against the narrowest width read.`), weight: 5, readiness: SCALE.overlap,
      }
    : { id: '506', ...none('overlap'), source: source('506', 'secondary'), weight: 5, readiness: YES_OR_NO }]],

  ['507', (level) => {
    const item = { id: '507', when: { weld: 'groove' }, source: source('507', 'memory', `Plates. ${RECORDED}`), weight: 5, readiness: SCALE.misalignment } as const
    return divided(item,
      recorded('misalignment', linear('thickness', { b: 0.1, c: 0.15, d: 0.25 }[level], 0.2, null)),
      recorded('misalignment', { b: linear('thickness', 0.1, 0, 3), c: linear('thickness', 0.15, 0, 4), d: linear('thickness', 0.25, 0, 5) }[level]))
  }],

  ['510', (level) => [{ id: '510', ...none('burn-through'), source: source('510', level === 'd' ? 'memory' : 'secondary'), weight: 5, readiness: YES_OR_NO }]],

  ['511', (level) => {
    const status = level === 'd' ? 'memory' : 'secondary'
    const item = { id: '511', when: { weld: 'groove' }, source: source('511', status, SHORT_NOTE), weight: 5, readiness: SCALE.root } as const
    if (level === 'b') return divided(item, recorded('underfill', fixed(0)), shortRecorded('underfill', linear('thickness', 0.05, 0, 0.5)))
    return undivided(item, shortRecorded('underfill', level === 'c' ? linear('thickness', 0.1, 0, 1) : linear('thickness', 0.25, 0, 2)))
  }],

  ['512', (level) => [{
    id: '512', when: { weld: 'fillet' }, kind: 'reading-range', reading: 'leg-difference', min: null,
    max: { b: linear('nominal-throat', 0.15, 1.5, null), c: linear('nominal-throat', 0.15, 2, null), d: linear('nominal-throat', 0.2, 2, null) }[level],
    source: level === 'd' ? source('512', 'memory', WEAK) : source('512', 'secondary'), weight: 10, readiness: SCALE.balance,
  }]],

  ['515', (level) => {
    const item = { id: '515', when: { weld: 'groove' }, source: source('515', level === 'd' ? 'memory' : 'secondary', SHORT_NOTE), weight: 5, readiness: SCALE.root } as const
    if (level === 'b') return divided(item, recorded('root-concavity', fixed(0)), shortRecorded('root-concavity', linear('thickness', 0.05, 0, 0.5)))
    if (level === 'c') return undivided(item, shortRecorded('root-concavity', linear('thickness', 0.1, 0, 1)))
    return divided(item, recorded('root-concavity', linear('thickness', 0.1, 0.2, null)), shortRecorded('root-concavity', linear('thickness', 0.2, 0, 2)))
  }],

  ['516', (level) => undivided(
    {
      id: '516', when: { weld: 'groove' }, weight: 5, readiness: YES_OR_NO,
      source: level === 'd' ? source('516', 'memory', 'Permitted in places.') : source('516', 'secondary', RECORDED),
    },
    level === 'd' ? PERMITTED : recorded('root-pore', fixed(0)))],

  ['517', (level) => [{
    id: '517', ...(level === 'd' ? PERMITTED : none('poor-restart')),
    source: source('517', 'memory', level === 'd' ? 'Permitted: the limit is that of the imperfection it causes.' : undefined), weight: 5, readiness: YES_OR_NO,
  }]],

  ['5213', (level) => {
    const item = { id: '5213', when: { weld: 'fillet' }, weight: 15, readiness: SCALE.throat } as const
    const thin = source('5213', 'memory', SHORT_NOTE)
    if (level === 'b') return undivided({ ...item, source: source('5213', 'memory', 'Read for plates over 3 mm; from memory for thinner ones.') }, FULL_THROAT)
    if (level === 'c') return divided({ ...item, source: source('5213', 'secondary', SHORT_NOTE) }, shortThroat(fixed(0.2)), shortThroat(linear('nominal-throat', 0.1, 0.3, 1)), thin)
    return divided({ ...item, source: source('5213', 'memory', `${WEAK} ${SHORT_NOTE}`) },
      shortThroat(linear('nominal-throat', 0.1, 0.2, null)), shortThroat(linear('nominal-throat', 0.1, 0.3, 2)), thin)
  }],

  ['5214', (level) => [{
    id: '5214', when: { weld: 'fillet' },
    ...(level === 'd' ? PERMITTED : {
      kind: 'reading-range', reading: 'throat', min: null,
      max: level === 'b' ? onTopOf('nominal-throat', 'nominal-throat', 0.15, 1, 3) : onTopOf('nominal-throat', 'nominal-throat', 0.2, 1, 4),
    } as const),
    source: source('5214', level === 'd' ? 'memory' : 'secondary'), weight: 5, readiness: level === 'd' ? YES_OR_NO : SCALE.throat,
  }]],

  ['601', (level) => [{
    id: '601', ...(level === 'd' ? PERMITTED : none('arc-strike')),
    source: source('601', level === 'b' ? 'secondary' : 'memory', level === 'd' ? `Permitted where the plate’s properties are not affected. ${WEAK}` : undefined),
    weight: 5, readiness: YES_OR_NO,
  }]],

  ['602', () => [{
    id: '602', kind: 'not-judged', reason: 'depends-on-application', source: source('602', 'memory', 'Acceptance depends on the application.'),
    weight: 0, readiness: YES_OR_NO,
  }]],

  ['617', (level) => undivided(
    {
      id: '617', when: { weld: 'fillet', thickness: { above: 3 } }, weight: 5, readiness: SCALE.gap,
      source: source('617', 'memory', `${RECORDED} Plates over 3 mm; thinner ones are not judged.`),
    },
    recorded('root-gap', { b: linear('nominal-throat', 0.1, 0.5, 2), c: linear('nominal-throat', 0.2, 0.5, 3), d: linear('nominal-throat', 0.3, 1, 4) }[level]))],
]

/** The item numbers judged, in the order of the table. */
export const ISO_ITEMS: readonly string[] = ITEMS.map(([id]) => id)

/** All rules, each item at the level asked for. */
export function isoRules(levelOf: (item: string) => Level): readonly Rule[] {
  return ITEMS.flatMap(([id, item]) => item(levelOf(id)))
}

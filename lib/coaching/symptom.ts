import type { Rule } from '../criteria/types'
import type { Finding, IndicationKind, Inspection, Weld } from '../scoring/types'

/** What is wrong with a weld, as a welder would say it. Causes belong to a symptom, not to a rule: several rules can show one. */
export const SYMPTOMS = [
  'crack', 'crater-crack', 'lack-of-fusion', 'incomplete-penetration', 'burn-through',
  'undercut', 'overlap', 'porosity', 'crater', 'slag', 'leg-too-short', 'throat-too-thin', 'underfill', 'excess-penetration', 'root-concavity',
  'convex', 'reinforcement-high', 'legs-unequal', 'weld-too-large', 'poor-restart', 'toe-too-steep', 'root-gap-wide', 'misalignment',
  'bead-too-wide', 'bead-too-narrow', 'width-uneven', 'spatter', 'arc-strike',
] as const
export type Symptom = (typeof SYMPTOMS)[number]

/**
 * How much a symptom matters, most first: 4 lets a joint come apart, 3 weakens it, 2 is size and shape, 1 is looks and cleaning.
 * Our choice; standards only say what is allowed.
 */
export function severityOf(symptom: Symptom): 1 | 2 | 3 | 4 {
  const place = SYMPTOMS.indexOf(symptom)
  if (place <= SYMPTOMS.indexOf('burn-through')) return 4
  if (place <= SYMPTOMS.indexOf('root-concavity')) return 3
  return place <= SYMPTOMS.indexOf('misalignment') ? 2 : 1
}

/** Rules whose name alone says what is wrong when they reject. */
const BY_RULE: Readonly<Record<string, Symptom>> = {
  'width-consistency': 'width-uneven', 'leg-balance': 'legs-unequal', crack: 'crack', fusion: 'lack-of-fusion', crater: 'crater',
  undercut: 'undercut', porosity: 'porosity', restart: 'poor-restart', overlap: 'overlap', convexity: 'convex',
  'porosity-per-inch': 'porosity', 'porosity-per-12-inches': 'porosity', 'porosity-frequency': 'porosity', 'porosity-diameter': 'porosity',
  'porosity-across-tension': 'porosity', 'root-concavity': 'root-concavity', 'melt-through': 'excess-penetration',
  '100': 'crack', '104': 'crater-crack', '2017': 'porosity', '2025': 'crater', '401': 'lack-of-fusion', '402': 'incomplete-penetration',
  '4021': 'incomplete-penetration', '501': 'undercut', '5011': 'undercut', '5012': 'undercut', '5013': 'root-concavity',
  '502': 'reinforcement-high', '503': 'convex', '504': 'excess-penetration', '505': 'toe-too-steep', '506': 'overlap', '507': 'misalignment', '5071': 'misalignment',
  '509': 'underfill', '510': 'burn-through', '511': 'underfill', '512': 'legs-unequal', '515': 'root-concavity', '516': 'porosity',
  '517': 'poor-restart', '5213': 'throat-too-thin', '5214': 'weld-too-large', '601': 'arc-strike', '602': 'spatter', '617': 'root-gap-wide',
}

const BY_KIND: Readonly<Record<IndicationKind, Symptom>> = {
  crack: 'crack', 'crater-crack': 'crater-crack', 'lack-of-fusion': 'lack-of-fusion', undercut: 'undercut', pore: 'porosity', overlap: 'overlap',
  'crater-pipe': 'crater', 'poor-restart': 'poor-restart', 'arc-strike': 'arc-strike', spatter: 'spatter', slag: 'slag', 'burn-through': 'burn-through',
}

/** What a cleaning rule looks for, in the order it matters. */
const CLEANING_KINDS: readonly IndicationKind[] = ['slag', 'spatter', 'arc-strike']

/**
 * The symptom behind a finding, from the reading and the side of the limit it lies on or nearest to.
 *
 * @param rule the rule as its set holds it; needed for rules of a program's own set, whose ids nobody knows beforehand
 * @returns null when the rule says nothing about how the weld was made
 */
export function symptomOf(finding: Finding, weld: Weld, inspection: Inspection, rule?: Rule): Symptom | null {
  switch (finding.rule) {
    case 'width-in-band': return bySide(finding, 'bead-too-narrow', 'bead-too-wide')
    case 'leg-size': return bySide(finding, 'leg-too-short', 'weld-too-large')
    case 'reinforcement': return bySide(finding, 'underfill', 'reinforcement-high')
    case 'cleaning': return seenAmong(CLEANING_KINDS, inspection) ?? 'slag'
    case 'crack': return crackKind(inspection)
    default: return BY_RULE[finding.rule] ?? (rule === undefined ? null : byCheck(finding, weld, inspection, rule))
  }
}

function bySide(finding: Finding, below: Symptom, above: Symptom): Symptom {
  const { min, max } = finding.limit
  if (finding.measured === null || min === null) return min === null ? above : below
  if (max === null) return below
  return finding.measured - min < max - finding.measured ? below : above
}

function byCheck(finding: Finding, weld: Weld, inspection: Inspection, rule: Rule): Symptom | null {
  switch (rule.kind) {
    case 'reading-range':
    case 'reading-allowance': return byReading(finding, weld, rule.reading)
    case 'reading-spread': return rule.reading === 'width' ? 'width-uneven' : null
    case 'attribute': return rule.answer === 'cratersFilled' ? 'crater' : 'lack-of-fusion'
    case 'not-judged': return null
    default: return seenAmong(rule.of, inspection) ?? (rule.of[0] === undefined ? null : BY_KIND[rule.of[0]])
  }
}

function byReading(finding: Finding, weld: Weld, reading: Extract<Rule, { kind: 'reading-range' }>['reading']): Symptom {
  switch (reading) {
    case 'width': return bySide(finding, 'bead-too-narrow', 'bead-too-wide')
    case 'shortest-leg': return bySide(finding, 'leg-too-short', 'weld-too-large')
    case 'leg-difference': return 'legs-unequal'
    case 'throat': return bySide(finding, 'throat-too-thin', 'weld-too-large')
    case 'convexity': return weld.type === 'fillet' ? 'convex' : 'reinforcement-high'
    case 'reinforcement': return bySide(finding, 'underfill', 'reinforcement-high')
    case 'penetration': return bySide(finding, 'incomplete-penetration', 'excess-penetration')
    case 'root-concavity': return 'root-concavity'
    case 'misalignment': return 'misalignment'
    case 'underfill': return 'underfill'
    case 'shrinkage-groove': return 'root-concavity'
    case 'root-shortfall': return 'incomplete-penetration'
    case 'root-pore': return 'porosity'
    case 'root-gap': return 'root-gap-wide'
    case 'toe-angle': return 'toe-too-steep'
  }
}

/** The symptom of the kinds, in their order, that was seen. */
function seenAmong(kinds: readonly IndicationKind[], inspection: Inspection): Symptom | null {
  const kind = kinds.find(one => inspection.indications.some(indication => indication.kind === one))
  return kind === undefined ? null : BY_KIND[kind]
}

/** A crack rule may cover crater cracks as well; what was seen decides which it is. */
const crackKind = (inspection: Inspection): Symptom => seenAmong(['crack', 'crater-crack'], inspection) ?? 'crack'

import { describe, expect, it } from 'vitest'
import { ALL_CAUSES, CAUSES, REMEDIES, type Cause } from '@/lib/coaching/causes'
import { COACHING_SOURCE, positionGroup, usualCauses } from '@/lib/coaching/common-practice'
import { severityOf, SYMPTOMS, symptomOf } from '@/lib/coaching/symptom'
import { allCriteria } from '@/lib/criteria/catalogue'
import { PROCESSES } from '@/lib/procedure/process'
import { scoreInspection } from '@/lib/scoring/score-inspection'
import { INDICATION_KINDS, type Inspection, type Weld } from '@/lib/scoring/types'

const POSITIONS = [
  { position: '1G', progression: null }, { position: '1F', progression: null }, { position: '2G', progression: null }, { position: '2F', progression: null },
  { position: '3G', progression: 'up' }, { position: '3F', progression: 'down' }, { position: '4G', progression: null }, { position: '4F', progression: null },
] as const
const WORK = PROCESSES.flatMap(process => POSITIONS.map(place => ({ process, ...place })))
const causesOf = (symptom: (typeof SYMPTOMS)[number], work: (typeof WORK)[number]) => usualCauses(symptom, work).map(one => one.cause)

it('is marked as common practice with no document behind it', () => {
  expect(COACHING_SOURCE).toMatchObject({ status: 'common-practice', clause: null })
})

it.each(SYMPTOMS)('has causes for %s in every process and position, the commonest first', symptom => {
  for (const work of WORK) {
    const usual = usualCauses(symptom, work)
    expect(usual.length, `${symptom} ${work.process} ${work.position}`).toBeGreaterThan(0)
    expect(usual.map(one => one.common)).toEqual(usual.map(one => one.common).sort((a, b) => b - a))
    expect(new Set(usual.map(one => one.cause)).size).toBe(usual.length)
  }
})

it('offers every cause somewhere, and every remedy by some cause', () => {
  const offered = new Set(SYMPTOMS.flatMap(symptom => WORK.flatMap(work => causesOf(symptom, work))))
  expect(ALL_CAUSES.filter(cause => !offered.has(cause))).toEqual([])
  const used = new Set<string>(ALL_CAUSES.map(cause => CAUSES[cause].remedy))
  expect(REMEDIES.filter(remedy => !used.has(remedy))).toEqual([])
})

describe('keeps causes to the processes that have them', () => {
  it.each<[Cause, readonly string[]]>([
    ['damp-electrodes', ['SMAW']], ['arc-too-long', ['SMAW']], ['amps-too-low', ['SMAW']],
    ['wire-feed-too-low', ['FCAW-S', 'FCAW-G', 'GMAW']], ['stick-out-too-short', ['FCAW-S', 'FCAW-G', 'GMAW']], ['wire-end-not-trimmed', ['FCAW-S', 'FCAW-G', 'GMAW']],
    ['gas-coverage-poor', ['FCAW-G', 'GMAW']], ['slag-ahead', ['SMAW', 'FCAW-S', 'FCAW-G']], ['damp-wire', ['FCAW-S', 'FCAW-G']],
  ])('%s to %j', (cause, processes) => {
    const found = new Set(SYMPTOMS.flatMap(symptom => WORK.filter(work => causesOf(symptom, work).includes(cause)).map(work => work.process)))
    expect([...found].sort()).toEqual([...processes].sort())
  })
})

it('speaks of pauses at the sides out of position, and of aiming high or low where one plate lies above the other', () => {
  const at = (position: string) => causesOf('undercut', { process: 'FCAW-S', position, progression: position.startsWith('3') ? 'up' : null } as (typeof WORK)[number])
  expect(at('3F')).toContain('side-pauses-too-short')
  expect(at('1F')).not.toContain('side-pauses-too-short')
  expect(at('2F')).toContain('aim-too-high')
  expect(at('3F')).not.toContain('aim-too-high')
})

it.each([
  ['1G', null, 'flat'], ['2F', null, 'horizontal'], ['3G', 'up', 'vertical-up'], ['3F', 'down', 'vertical-down'], ['3F', null, 'vertical-up'], ['4f', null, 'overhead'], ['6G', null, null],
] as const)('puts %s %s into %s', (position, progression, group) => {
  expect(positionGroup({ position, progression })).toBe(group)
})

it('ranks what lets a joint come apart over what only looks bad', () => {
  expect(severityOf('crack')).toBe(4)
  expect(severityOf('burn-through')).toBe(4)
  expect(severityOf('undercut')).toBe(3)
  expect(severityOf('root-concavity')).toBe(3)
  expect(severityOf('convex')).toBe(2)
  expect(severityOf('misalignment')).toBe(2)
  expect(severityOf('bead-too-wide')).toBe(1)
  expect(severityOf('arc-strike')).toBe(1)
})

it('finds a symptom behind every rejection of every built-in set, with the set at hand or without', () => {
  const fillet: Weld = { type: 'fillet', process: 'SMAW', position: '2F', progression: null, thicknessMm: 12, electrodeDiameterMm: 3.2, nominalLegMm: 8, lengthMm: 300 }
  const groove: Weld = { ...fillet, type: 'groove', position: '2G', nominalLegMm: null, completePenetration: true, transverseToTension: true }
  const station = { widthMm: 40, legAMm: 2, legBMm: 20, throatMm: 1, convexityMm: 12, reinforcementMm: 12, penetrationMm: 12, rootConcavityMm: 9, misalignmentMm: 9, underfillMm: 9,
    rootWidthMm: 4, shrinkageGrooveMm: 9, rootShortfallMm: 9, rootPoreMm: 2, rootGapMm: 9, toeAngleDeg: 60 }
  const poor: Inspection = {
    stations: [{ atMm: 100, ...station }, { atMm: 200, ...station, widthMm: 10, throatMm: 30 }], lookedFor: [...INDICATION_KINDS], cratersFilled: false, fusionComplete: false,
    indications: INDICATION_KINDS.flatMap((kind, i) => [0, 2].map(step => ({ kind, atMm: 10 + 20 * i + step, lengthMm: 15, depthMm: 9, diameterMm: 12, heightMm: 9 }))),
  }
  const findings = allCriteria().flatMap(set => [fillet, groove].flatMap(weld =>
    scoreInspection(weld, poor, set).findings.filter(one => one.verdict === 'reject').map(finding => ({ set: set.id, rule: finding.rule, without: symptomOf(finding, weld, poor), symptom: symptomOf(finding, weld, poor, set.rules.find(rule => rule.id === finding.rule)) }))))
  expect(findings.length).toBeGreaterThan(100)
  expect(['4021', '5013', '504', '505', '516', '617'].filter((rule) => !findings.some((one) => one.rule === rule))).toEqual([])
  expect(findings.filter(one => one.symptom === null || one.without !== one.symptom)).toEqual([])
})

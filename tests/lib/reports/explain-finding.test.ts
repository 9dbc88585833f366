import { describe, expect, it } from 'vitest'
import { allCriteria, criteriaById } from '@/lib/criteria/catalogue'
import type { CriteriaSet } from '@/lib/criteria/types'
import { LOCALES } from '@/lib/language/say'
import { explainFinding } from '@/lib/reports/explain-finding'
import { ruleName } from '@/lib/reports/rule-names'
import { NOT_APPLICABLE_REASONS, NOT_MEASURED_REASONS } from '@/lib/scoring/reason'
import { scoreInspection } from '@/lib/scoring/score-inspection'
import { INDICATION_KINDS, type Finding, type FindingVerdict, type Indication, type Inspection, type Station, type Weld } from '@/lib/scoring/types'
import { formatForReader } from '@/lib/units/display'

const fillet: Weld = {
  type: 'fillet', process: 'FCAW-S', position: '2F', progression: null, thicknessMm: 12.7, electrodeDiameterMm: 1.6, nominalLegMm: 8, lengthMm: 400,
}
const groove: Weld = { ...fillet, type: 'groove', position: '3G', progression: 'up', nominalLegMm: null, completePenetration: true }
const stiffener: Weld = { ...fillet, stiffenerToWeb: true }
const tension: Weld = { ...groove, transverseToTension: true }
const thin: Weld = { ...fillet, thicknessMm: 2.5, nominalLegMm: 3 }
const thinGroove: Weld = { ...groove, thicknessMm: 2.5 }
const WELDS = [fillet, groove, stiffener, tension, thin, thinGroove]

const station = (atMm: number, more: Partial<Station> = {}): Station => ({
  atMm, widthMm: 9, legAMm: 8.5, legBMm: 8.5, throatMm: 6, convexityMm: 1, reinforcementMm: 1,
  penetrationMm: 1, rootConcavityMm: 0, misalignmentMm: 0, underfillMm: 0, rootWidthMm: 4, shrinkageGrooveMm: 0, rootShortfallMm: 0,
  rootPoreMm: 0, rootGapMm: 0, toeAngleDeg: 160, ...more,
})
const clean: Inspection = {
  stations: [station(50), station(200), station(350)], indications: [], lookedFor: [...INDICATION_KINDS],
  cratersFilled: true, fusionComplete: true, gaugeResolutionMm: 0.5,
}
const everyFault: Indication[] = INDICATION_KINDS.map((kind, i) => ({ kind, atMm: 20 + 25 * i, lengthMm: 20, depthMm: 4, diameterMm: 4, heightMm: 4, toe: i % 2 === 0 ? 'A' : 'B' }))
const poor: Inspection = {
  ...clean, cratersFilled: false, fusionComplete: false,
  stations: [
    station(50, {
      widthMm: 20, legAMm: 2, throatMm: 2, convexityMm: 9, reinforcementMm: 9, penetrationMm: 9, rootConcavityMm: 4, misalignmentMm: 9, underfillMm: 5,
      shrinkageGrooveMm: 4, rootShortfallMm: 4, rootPoreMm: 2, rootGapMm: 6, toeAngleDeg: 70,
    }),
    station(200), station(350, { throatMm: 20 }),
  ],
  indications: [...everyFault, { kind: 'pore', atMm: 21, diameterMm: 9 }, { kind: 'pore', atMm: 24, diameterMm: 9 }],
}
const thick: Inspection = { ...poor, stations: clean.stations.map(one => ({ ...one, throatMm: 20 })) }
const mild: Inspection = {
  ...clean, indications: [{ kind: 'undercut', atMm: 100, lengthMm: 20, depthMm: 0.2, toe: 'A' }, { kind: 'pore', atMm: 40, diameterMm: 0.9 }],
}
const blank: Inspection = { stations: [], indications: [], lookedFor: [], cratersFilled: null, fusionComplete: null }
const seenUnsized: Inspection = {
  ...clean, stations: [{ atMm: 100 }, { atMm: 200 }],
  indications: INDICATION_KINDS.map(kind => ({ kind, atMm: 40 })), cratersFilled: null, fusionComplete: null,
}
const INSPECTIONS = [clean, poor, thick, mild, blank, seenUnsized]

/** Every finding that judging all these welds by a set gives. */
const judged = (criteria: CriteriaSet) =>
  WELDS.flatMap(weld => INSPECTIONS.flatMap(inspection => scoreInspection(weld, inspection, criteria).findings.map(finding => ({ finding, weld, inspection }))))

const WHOLE_SENTENCES = /^[A-ZÁÉÍÓÚ0-9][^{}]*\.$/
const BROKEN = /undefined|null|NaN|Infinity|\{|\}| {2}|\.\.| ,|;;/

describe.each(allCriteria().map(set => [set.id, set] as const))('%s', (_, criteria) => {
  const all = judged(criteria)

  it.each(LOCALES)('explains every finding in whole sentences in %s', locale => {
    const broken: string[] = []
    for (const units of ['in', 'mm'] as const) {
      for (const { finding, weld, inspection } of all) {
        for (const reader of [{ locale, units, weld, inspection, criteria }, { locale, units }]) {
          const text = explainFinding(finding, reader)
          if (!WHOLE_SENTENCES.test(text) || BROKEN.test(text)) broken.push(`${finding.rule} ${finding.verdict}: ${text}`)
        }
      }
    }
    expect(all.length).toBeGreaterThan(100)
    expect(broken).toEqual([])
  })

  it('names the limit in the reader’s units wherever a length was judged against one', () => {
    const lengths = all.filter(({ finding }) => finding.unit === 'mm' && finding.verdict === 'reject' && finding.limit.max !== 0)
    const silent = lengths.filter(({ finding, weld, inspection }) => (['in', 'mm'] as const).some(units =>
      !explainFinding(finding, { locale: 'en', units, weld, inspection, criteria }).includes(formatForReader(finding.limit.max ?? finding.limit.min ?? 0, units))))
    expect(lengths.length).toBeGreaterThan(0)
    expect(silent).toEqual([])
  })

  it('says something different in Spanish', () => {
    const same = all.filter(({ finding, weld, inspection }) => {
      const reader = { units: 'mm', weld, inspection, criteria } as const
      return explainFinding(finding, { locale: 'es', ...reader }) === explainFinding(finding, { locale: 'en', ...reader })
    })
    expect(same).toEqual([])
  })

  it('has words for every verdict of every rule, reached here or not', () => {
    const verdicts: readonly FindingVerdict[] = ['accept', 'reject', 'not-measured', 'not-applicable']
    for (const rule of criteria.rules) {
      const example = all.find(({ finding }) => finding.rule === rule.id && finding.measured !== null)?.finding
        ?? all.find(({ finding }) => finding.rule === rule.id)?.finding
      expect(example, rule.id).toBeDefined()
      const told = verdicts.flatMap(verdict => LOCALES.map(locale =>
        explainFinding({ ...(example as Finding), verdict, reason: verdict === 'not-applicable' ? 'other-service' : 'not-looked-for' }, { locale, units: 'in', criteria })))
      expect(new Set(told).size, `${rule.id}: ${told.join(' | ')}`).toBeGreaterThanOrEqual(6)
      told.forEach(text => expect(text).toMatch(WHOLE_SENTENCES))
    }
  })

  it('names every rule in both languages', () => {
    for (const { id } of criteria.rules) {
      expect(ruleName(id, 'en')).not.toBe(id)
      expect(ruleName(id, 'es')).not.toBe(ruleName(id, 'en'))
    }
  })
})

it('was tried on welds that every rule of every set accepts, and on welds it rejects', () => {
  for (const criteria of allCriteria()) {
    const all = judged(criteria)
    for (const rule of criteria.rules.filter(one => one.kind !== 'not-judged')) {
      const seen = new Set(all.filter(({ finding }) => finding.rule === rule.id).map(({ finding }) => finding.verdict))
      expect([...seen], `${criteria.id} ${rule.id}`).toEqual(expect.arrayContaining(['accept', 'reject']))
    }
  }
})

describe('sentences', () => {
  const us = criteriaById('structural-static.us')
  const explain = (weld: Weld, inspection: Inspection, criteria: CriteriaSet, rule: string, units: 'in' | 'mm', locale: 'en' | 'es' = 'en') => {
    const seen = { ...inspection, stations: inspection.stations.filter(one => one.atMm <= weld.lengthMm) }
    const finding = scoreInspection(weld, seen, criteria).findings.find(one => one.rule === rule)
    if (finding === undefined) throw new Error(`no finding ${rule}`)
    return explainFinding(finding, { locale, units, weld, inspection, criteria })
  }
  const coarse = { ...clean, gaugeResolutionMm: 0.01 }
  const undercut = (depthMm: number, lengthMm: number, toe: 'A' | 'B' = 'B'): Inspection => ({ ...coarse, indications: [{ kind: 'undercut', atMm: 50.8, lengthMm, depthMm, toe }] })
  const short: Weld = { ...fillet, lengthMm: 254 }

  it('tells undercut, its length, its toe, its place and the allowance', () => {
    expect(explain(short, undercut(0.9, 101.6), us, 'undercut', 'in')).toBe(
      'Undercut 0.035 in deep for 4 in on the lower toe, 2 in from the start; at most 1/32 in is allowed beyond 2 in of the weld.')
    expect(explain(fillet, undercut(0.9, 101.6), us, 'undercut', 'in')).toContain('at most 1/32 in is allowed beyond 2 in in any 12 in.')
    expect(explain(short, undercut(0.9, 101.6), us, 'undercut', 'mm', 'es')).toBe(
      'Socavado de 0.9 mm de profundidad a lo largo de 102 mm en el pie inferior del cordón, a 51 mm del arranque; se permite a lo más 0.79 mm, salvo en 50.8 mm de la soldadura.')
  })

  it('says when the depth is too much however short', () => {
    expect(explain(short, undercut(2, 10), us, 'undercut', 'mm')).toContain('at most 1.6 mm is allowed, however short the stretch.')
  })

  it('says that an undercut inside its allowance is within the limit', () => {
    expect(explain(short, undercut(0.5, 20), us, 'undercut', 'mm')).toMatch(/^Undercut 0\.5 mm deep .*, within the limit; at most/)
  })

  it('names the toes by the position', () => {
    const inPosition = (position: string) => explain({ ...short, position }, undercut(2, 10, 'A'), us, 'undercut', 'mm')
    expect(inPosition('2F')).toContain('on the upper toe')
    expect(inPosition('3F')).toContain('on the left toe')
    expect(inPosition('4F')).toContain('on the upper toe')
  })

  it('says both toes when both are undercut', () => {
    const both: Inspection = { ...coarse, indications: [
      { kind: 'undercut', atMm: 20, lengthMm: 60, depthMm: 0.9, toe: 'A' }, { kind: 'undercut', atMm: 120, lengthMm: 60, depthMm: 0.9, toe: 'B' },
    ] }
    expect(explain(short, both, us, 'undercut', 'mm')).toContain('on both toes')
  })

  it('adds up pores and names the window', () => {
    const pores: Inspection = { ...coarse, indications: [0, 5, 10].map(at => ({ kind: 'pore' as const, atMm: 101.6 + at, diameterMm: 4 })) }
    expect(explain(fillet, pores, us, 'porosity-per-inch', 'in')).toBe(
      'Pores: they add up to 15/32 in, between 4 in and 4 3/8 in from the start; together at most 3/8 in is allowed in any 1 in.')
    expect(explain(fillet, pores, us, 'porosity-per-12-inches', 'in')).toContain('within the limit; together at most 3/4 in is allowed in any 12 in.')
  })

  it('tells a short leg, for how long, and how much of the weld may be short', () => {
    const legs: Inspection = { ...coarse, stations: [station(50, { legAMm: 7.5 }), station(200, { legAMm: 7.5 }), station(350)] }
    expect(explain(fillet, legs, us, 'leg-size', 'mm')).toMatch(/^Shortest leg 7\.5 mm for 275 mm, .*; at least 8\.0 mm is asked for \(less only over 10 % of the weld\)\.$/)
  })

  it('lists what was left on the weld', () => {
    const dirty: Inspection = { ...clean, indications: [{ kind: 'arc-strike', atMm: 30 }, { kind: 'slag', atMm: 90 }] }
    expect(explain(fillet, dirty, criteriaById('shop-bead'), 'cleaning', 'mm')).toBe('Slag, arc strikes: 2 found, 30 mm from the start; none is allowed.')
    expect(explain(fillet, clean, criteriaById('shop-bead'), 'cleaning', 'mm')).toBe('Spatter, slag, arc strikes: looked for, none found; none is allowed.')
  })

  it('tells a toe angle in degrees, whatever the reader’s units, and no gauge step beside it', () => {
    const sharp: Inspection = { ...clean, stations: [station(50, { toeAngleDeg: 109.9 }), station(200)] }
    expect(explain(fillet, sharp, criteriaById('iso5817-b'), '505', 'in')).toBe('Toe angle 109.9°, 1 15/16 in from the start; at least 110° is asked for.')
    expect(explain(fillet, sharp, criteriaById('iso5817-b'), '505', 'mm', 'es')).toBe('Pie del cordón a 109.9°, a 50 mm del arranque; se pide al menos 110°.')
  })

  it('says of overlap that none was found, and names no limit, where nobody read the width it hangs on', () => {
    const bare: Inspection = { ...clean, stations: [{ atMm: 50 }] }
    expect(explain(fillet, bare, criteriaById('iso5817-d'), '506', 'mm')).toBe('Overlap: looked for, none found.')
    expect(explain(fillet, bare, criteriaById('iso5817-d'), '506', 'mm', 'es')).toBe('Traslape: se buscó, sin encontrar nada.')
  })

  it('warns that a reading is as good as on the limit', () => {
    const close: Inspection = { ...clean, indications: [{ kind: 'undercut', atMm: 50, lengthMm: 100, depthMm: 0.9, toe: 'B' }] }
    expect(explain(short, close, us, 'undercut', 'mm')).toMatch(/ The reading lies within one step of the gauge \(0\.5 mm\) of its limit: read it again\.$/)
    expect(explain(short, { ...close, gaugeResolutionMm: 0.01 }, us, 'undercut', 'mm')).not.toContain('gauge')
  })

  it('never shows a rejected reading as equal to its limit', () => {
    const hair: Inspection = { ...coarse, indications: [{ kind: 'undercut', atMm: 10, lengthMm: 200, depthMm: 0.7945 }] }
    expect(explain(short, hair, us, 'undercut', 'in')).not.toMatch(/^Undercut 1\/32 in deep/)
  })
})

it.each([...NOT_MEASURED_REASONS, ...NOT_APPLICABLE_REASONS])('puts the reason %s into words of its own', reason => {
  const base: Finding = {
    rule: 'undercut', verdict: 'not-measured', measured: null, limit: { min: null, max: null }, unit: 'mm', margin: null, closeCall: false,
    where: null, source: { title: 'x', clause: null, status: 'memory' }, reason,
  }
  const other = explainFinding({ ...base, reason: 'a code from the future' }, { locale: 'en', units: 'mm' })
  expect(other).toContain('Something the rule needs is missing.')
  for (const locale of LOCALES) expect(explainFinding(base, { locale, units: 'mm' })).not.toContain('missing')
})

it('names a program’s own rules after what they look at', () => {
  const own: CriteriaSet = {
    ...criteriaById('shop-bead'), id: 'own', rules: [
      { id: 'face-flat', kind: 'reading-range', reading: 'convexity', min: null, max: { form: 'fixed', mm: 1 }, source: { title: 'House', clause: null, status: 'common-practice' }, weight: 1, readiness: { as: 'attribute' } },
      { id: 'no-holes', kind: 'absent', of: ['pore', 'burn-through'], source: { title: 'House', clause: null, status: 'common-practice' }, weight: 1, readiness: { as: 'attribute' } },
    ],
  }
  expect(ruleName('face-flat', 'en', own)).toBe('Convexity')
  expect(ruleName('no-holes', 'es', own)).toBe('Poros, Perforación')
  expect(ruleName('no-holes', 'es')).toBe('no-holes')
  const finding = scoreInspection(fillet, { ...clean, stations: [station(50, { convexityMm: 2 })] }, own).findings[0] as Finding
  expect(explainFinding(finding, { locale: 'en', units: 'mm', weld: fillet, criteria: own })).toMatch(/^Face convex by 2\.0 mm, 50 mm from the start; at most 1\.0 mm is allowed\./)
})

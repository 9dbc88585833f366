import { describe, expect, it } from 'vitest'
import { allCriteria, criteriaById } from '@/lib/criteria/catalogue'
import { readingsNeeded, readingsWhereRecorded } from '@/lib/criteria/readings-needed'
import type { CriteriaSet } from '@/lib/criteria/types'
import { scoreInspection } from '@/lib/scoring/score-inspection'
import { INDICATION_KINDS, type Weld } from '@/lib/scoring/types'

const weldOf = (type: 'fillet' | 'groove'): Weld => ({
  type, process: 'FCAW-S', position: type === 'fillet' ? '2F' : '2G', progression: null, thicknessMm: 9.525, electrodeDiameterMm: 1.143,
  nominalLegMm: type === 'fillet' ? 6.35 : null, lengthMm: 200,
})

describe('what a form asks for', () => {
  it.each([
    ['shop-bead', 'fillet', ['widthMm', 'legAMm', 'legBMm']], ['shop-bead', 'groove', ['widthMm']],
    ['structural-static.us', 'fillet', ['widthMm', 'legAMm', 'legBMm', 'convexityMm']], ['structural-static.us', 'groove', ['widthMm', 'reinforcementMm']],
    ['iso5817-b', 'fillet', ['widthMm', 'legAMm', 'legBMm', 'throatMm', 'convexityMm']],
  ] as const)('%s on a %s weld: %j', (id, type, fields) => {
    expect(readingsNeeded(criteriaById(id), type)).toEqual(fields)
  })

  it('always includes the width, of which the bead is drawn', () => {
    const none: CriteriaSet = { ...criteriaById('shop-bead'), rules: [] }
    expect([readingsNeeded(none, 'fillet'), readingsNeeded(none, 'groove')]).toEqual([['widthMm'], ['widthMm']])
  })

  it('asks in one order and for nothing twice, whatever the order of the rules', () => {
    const set = criteriaById('iso5817-b')
    const fields = readingsNeeded({ ...set, rules: [...set.rules].reverse() }, 'fillet')
    expect(fields).toEqual(readingsNeeded(set, 'fillet'))
    expect(new Set(fields).size).toBe(fields.length)
  })
})

describe('what a form offers beside that', () => {
  it.each([
    ['shop-bead', 'fillet', []], ['structural-static.us', 'groove', []], ['qualification-visual.us', 'groove', ['penetrationMm', 'rootConcavityMm']],
    ['iso5817-b', 'fillet', ['toeAngleDeg', 'rootGapMm']],
    ['iso5817-b', 'groove', ['toeAngleDeg', 'underfillMm', 'misalignmentMm', 'penetrationMm', 'rootWidthMm', 'rootShortfallMm', 'rootConcavityMm', 'shrinkageGrooveMm', 'rootPoreMm']],
  ] as const)('%s on a %s weld: %j', (id, type, fields) => {
    expect(readingsWhereRecorded(criteriaById(id), type)).toEqual(fields)
  })

  it('leaves out root pores where the set permits them', () => {
    expect(readingsWhereRecorded(criteriaById('iso5817-d'), 'groove')).not.toContain('rootPoreMm')
  })
})

describe('filling in', () => {
  const everySet = allCriteria().flatMap((set) => [[set.id, 'fillet', set], [set.id, 'groove', set]] as const)
  const ways = [['just that', () => []], ['all that is offered beside it', readingsWhereRecorded]] as const
  describe.each(ways)('%s', (_way, offered) => it.each(everySet)('leaves no reading of %s unmeasured on a %s weld', (_id, type, criteria) => {
    const sizes = { widthMm: 6.2, legAMm: 7, legBMm: 7, throatMm: 4.9, convexityMm: 0.5, reinforcementMm: 1, penetrationMm: 0.5, rootConcavityMm: 0, misalignmentMm: 0, underfillMm: 0,
      rootWidthMm: 4, shrinkageGrooveMm: 0, rootShortfallMm: 0, rootPoreMm: 0, rootGapMm: 0, toeAngleDeg: 160 }
    const asked = Object.fromEntries([...readingsNeeded(criteria, type), ...offered(criteria, type)].map((field) => [field, sizes[field]]))
    const inspection = { stations: [{ atMm: 50, ...asked }, { atMm: 150, ...asked }], indications: [], lookedFor: [...INDICATION_KINDS], cratersFilled: true, fusionComplete: true }
    const { findings, verdict } = scoreInspection(weldOf(type), inspection, criteria)
    expect(findings.filter((finding) => finding.verdict === 'not-measured').map(({ rule, reason }) => [rule, reason])).toEqual([])
    expect(verdict).not.toBe('incomplete')
  }))
})

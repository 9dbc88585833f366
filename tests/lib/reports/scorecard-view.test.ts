import { describe, expect, it } from 'vitest'
import { criteriaById } from '@/lib/criteria/catalogue'
import { scorecardView, type ScorecardReader } from '@/lib/reports/scorecard-view'
import { scoreInspection } from '@/lib/scoring/score-inspection'
import { INDICATION_KINDS, type Finding, type Inspection, type Scorecard, type Weld } from '@/lib/scoring/types'

/** 0.045 in wire: the band of five to six diameters is 5.715 to 6.858 mm. */
const weld: Weld = {
  type: 'fillet', process: 'FCAW-S', position: '2F', progression: null, thicknessMm: 9.525, electrodeDiameterMm: 1.143, nominalLegMm: 6.35, lengthMm: 203.2,
}
/** Too wide at one place, legs 2.6 mm apart, undercut 0.9 mm deep; craters, restarts and cleaning not looked at. */
const inspection: Inspection = {
  stations: [{ atMm: 50, widthMm: 6.35, legAMm: 6.35, legBMm: 7 }, { atMm: 150, widthMm: 7.2, legAMm: 6.6, legBMm: 9.2 }],
  indications: [{ kind: 'undercut', atMm: 20, lengthMm: 30, depthMm: 0.9, toe: 'A' }],
  lookedFor: ['undercut', 'pore', 'crack', 'crater-crack'], cratersFilled: null, fusionComplete: null, gaugeResolutionMm: 0.79,
}
const viewOf = (id: string, units: 'in' | 'mm' = 'in', locale: 'en' | 'es' = 'en', look: Inspection = inspection) => {
  const criteria = criteriaById(id)
  return scorecardView(scoreInspection(weld, look, criteria), { locale, units, weld, inspection: look, criteria })
}
const row = (id: string, rule: string, units: 'in' | 'mm' = 'in', locale: 'en' | 'es' = 'en', look?: Inspection) => {
  const line = viewOf(id, units, locale, look).lines.find((each) => each.rule === rule)
  return line && [line.reading, line.limit, line.margin]
}

describe('the order', () => {
  it('is rejected rules, then what was not measured, then the rest, each in the order of the set', () => {
    const { lines } = viewOf('shop-bead')
    expect(lines.map(({ rule, verdict }) => [rule, verdict])).toEqual([
      ['width-in-band', 'reject'], ['leg-balance', 'reject'], ['undercut', 'reject'],
      ['fusion', 'not-measured'], ['crater', 'not-measured'], ['restart', 'not-measured'], ['cleaning', 'not-measured'],
      ['width-consistency', 'accept'], ['leg-size', 'accept'], ['crack', 'accept'], ['porosity', 'accept'],
    ])
  })

  it('puts what does not apply last', () => {
    const verdicts = viewOf('structural-static.us').lines.map(({ verdict }) => verdict)
    expect(verdicts).toContain('not-applicable')
    expect(verdicts.lastIndexOf('accept')).toBeLessThan(verdicts.indexOf('not-applicable'))
  })

  it('does not disturb the scorecard it was given', () => {
    const criteria = criteriaById('shop-bead')
    const scorecard = scoreInspection(weld, inspection, criteria)
    const rules = scorecard.findings.map(({ rule }) => rule)
    scorecardView(scorecard, { locale: 'en', units: 'in', weld, inspection, criteria })
    expect(scorecard.findings.map(({ rule }) => rule)).toEqual(rules)
  })
})

describe('the head', () => {
  it('says the verdict in the reader’s words, the mark and by what it was judged', () => {
    const { verdict, verdictWord, criteriaTitle } = viewOf('shop-bead')
    expect({ verdict, verdictWord, criteriaTitle }).toEqual({ verdict: 'reject', verdictWord: 'Reject', criteriaTitle: 'Shop rule for a practice bead' })
    expect(viewOf('shop-bead', 'in', 'es').verdictWord).toBe('Se rechaza')
    const { mark } = viewOf('shop-bead')
    expect(mark).toBeGreaterThanOrEqual(0)
    expect(mark).toBeLessThan(70)
  })

  it('gives an incomplete inspection no mark', () => {
    const { verdictWord, mark } = viewOf('structural-static.us')
    expect([verdictWord, mark]).toEqual(['Incomplete', null])
  })

  it('says when a limit shown is from memory, and only then', () => {
    expect(viewOf('structural-static.us').fromMemory).toBe(true)
    expect(viewOf('shop-bead').fromMemory).toBe(false)
    const { lines } = viewOf('structural-static.us')
    expect(lines.find(({ rule }) => rule === 'convexity')).toMatchObject({ sourceStatus: 'memory', sourceStatusWord: 'from memory, not read again' })
    expect(lines.find(({ rule }) => rule === 'undercut')).toMatchObject({
      sourceStatusWord: 'read in the standard', source: 'AWS D1.1/D1.1M, Structural Welding Code: Steel, Table 8.1 (Table 6.1 before 2020), item 7(A)',
    })
  })

  it('does not count a limit from memory that did not apply', () => {
    const criteria = criteriaById('shop-bead')
    const scorecard = scoreInspection(weld, inspection, criteria)
    const recalled = (verdict: Finding['verdict']): Scorecard => ({
      ...scorecard, findings: scorecard.findings.map((each) => (each.rule === 'porosity' ? { ...each, verdict, source: { ...each.source, status: 'memory' } } : each)),
    })
    const reader: ScorecardReader = { locale: 'en', units: 'in', weld, inspection, criteria }
    expect([scorecardView(recalled('accept'), reader).fromMemory, scorecardView(recalled('not-applicable'), reader).fromMemory]).toEqual([true, false])
  })
})

describe('a row', () => {
  it.each([
    ['width-in-band', ['9/32 in', '0.225 in to 0.27 in', '0.013 in outside'], ['7.2 mm', '5.7 mm a 6.9 mm', '0.34 mm por fuera']],
    ['leg-balance', ['0.102 in', 'at most 3/32 in', '0.009 in outside'], ['2.6 mm', 'máximo 2.4 mm', '0.22 mm por fuera']],
    ['undercut', ['0.035 in', 'at most 1/32 in', '0.004 in outside'], ['0.9 mm', 'máximo 0.79 mm', '0.11 mm por fuera']],
    ['width-consistency', ['0.033 in', 'at most 1/16 in', '0.029 in inside'], ['0.85 mm', 'máximo 1.6 mm', '0.74 mm por dentro']],
    ['crack', ['none seen', 'none allowed', null], ['no se vio', 'no se permite', null]],
    ['fusion', ['not measured', 'must be complete', null], ['sin medir', 'debe ser completa', null]],
    ['crater', ['not measured', 'must be filled', null], ['sin medir', 'deben estar llenos', null]],
  ] as const)('of %s reads its reading, limit and margin in inches and English, millimetres and Spanish', (rule, en, es) => {
    expect(row('shop-bead', rule)).toEqual(en)
    expect(row('shop-bead', rule, 'mm', 'es')).toEqual(es)
  })

  it('that sits on its limit says so, and names no margin of zero', () => {
    expect(row('shop-bead', 'leg-size')).toEqual(['1/4 in', 'at least 1/4 in', 'on the limit'])
  })

  it('that is a hair outside shows enough decimals to tell it from its limit', () => {
    const look = { ...inspection, indications: [{ kind: 'undercut' as const, atMm: 20, depthMm: 0.8 }] }
    expect(row('shop-bead', 'undercut', 'in', 'en', look)?.slice(0, 2)).toEqual(['0.0315 in', 'at most 1/32 in'])
  })

  it('of a rule that asks a question says the answer', () => {
    const look = (answer: boolean): Inspection => ({ ...inspection, lookedFor: [...INDICATION_KINDS], fusionComplete: answer, cratersFilled: answer })
    expect([row('shop-bead', 'fusion', 'in', 'en', look(true)), row('shop-bead', 'fusion', 'in', 'en', look(false))]).toEqual([['complete', 'must be complete', null], ['not complete', 'must be complete', null]])
    expect([row('shop-bead', 'crater', 'in', 'es', look(true)), row('shop-bead', 'crater', 'in', 'es', look(false))]).toEqual([['llenos', 'deben estar llenos', null], ['sin llenar', 'deben estar llenos', null]])
  })

  it('of a rule whose limit hangs on something unmeasured, or that does not apply, shows no limit', () => {
    expect(row('structural-static.us', 'convexity')).toEqual(['not measured', '–', null])
    expect(row('structural-static.us', 'reinforcement')).toEqual(['Does not apply', '–', null])
  })

  it('within a step of the gauge says to measure again', () => {
    const close = (rule: string) => viewOf('shop-bead').lines.find((each) => each.rule === rule)?.closeCall
    expect(close('undercut')).toBe('Within one step of the gauge: measure it again.')
    expect(close('crack')).toBeNull()
  })

  it('has a name, a sentence and a source in both languages, for every rule', () => {
    for (const id of ['shop-bead', 'structural-static.us', 'structural-cyclic.si', 'iso5817-b']) {
      for (const [units, locale] of [['in', 'en'], ['mm', 'es']] as const) {
        for (const line of viewOf(id, units, locale).lines) {
          for (const text of [line.name, line.verdictWord, line.reading, line.limit, line.sentence, line.source, line.sourceStatusWord]) expect(text.trim(), `${id} ${line.rule}`).not.toBe('')
          expect([line.reading, line.limit, line.margin].join(' '), `${id} ${line.rule}`).not.toMatch(/NaN|undefined|null|Infinity/)
        }
      }
    }
  })
})

import { describe, expect, it } from 'vitest'
import { criteriaById } from '@/lib/criteria/catalogue'
import { worstMargin } from '@/lib/readiness/worst-margin'
import { marginScale } from '@/lib/scoring/margin-scale'
import { scoreInspection } from '@/lib/scoring/score-inspection'
import { INDICATION_KINDS, type Weld } from '@/lib/scoring/types'

describe('the scale of a margin', () => {
  it('is the rule’s own with one limit, and in a wide band', () => {
    expect(marginScale(1.2, { min: null, max: 1 })).toBe(1.2)
    expect(marginScale(1.2, { min: 1, max: null })).toBe(1.2)
    expect(marginScale(1.2, { min: 0, max: 10 })).toBe(1.2)
  })

  it('shrinks with a band narrower than the scale can tell apart', () => {
    expect(marginScale(1.2, { min: 5, max: 6 })).toBeCloseTo(0.75, 12)
    expect(marginScale(1.2, { min: 5, max: 5 })).toBe(1.2)
  })

  it('makes the middle of the band equally comfortable for thin and thick wire', () => {
    const middle = (diameter: number): number | null => {
      const weld: Weld = { type: 'fillet', process: 'FCAW-S', position: '2F', progression: null, thicknessMm: 9.5, electrodeDiameterMm: diameter, nominalLegMm: 6, lengthMm: 150 }
      const stations = [30, 75, 120].map((atMm) => ({ atMm, widthMm: 5.5 * diameter, legAMm: 8, legBMm: 8 }))
      const criteria = criteriaById('shop-bead')
      const card = scoreInspection(weld, { stations, indications: [], lookedFor: INDICATION_KINDS, cratersFilled: true, fusionComplete: true }, criteria)
      const finding = card.findings.find(({ rule }) => rule === 'width-in-band')
      expect(worstMargin({ ...card, findings: finding ? [finding] : [] }, criteria).worstMargin).toBeCloseTo(finding?.standardMargin ?? NaN, 12)
      return finding?.standardMargin ?? null
    }
    expect(middle(0.9)).toBeCloseTo(2 / 3, 9)
    expect(middle(1.143)).toBeCloseTo(2 / 3, 9)
  })
})

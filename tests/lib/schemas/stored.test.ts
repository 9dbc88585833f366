// Documents that the database keeps whole: what is written is what is read, and nothing else is taken for it.
import { describe, expect, it } from 'vitest'
import { criteriaById } from '@/lib/criteria/catalogue'
import type { BoothCard } from '@/lib/procedure/booth-card'
import { absorbCoupon, startState } from '@/lib/readiness/incremental'
import { SHIPPED_PARAMETERS } from '@/lib/readiness/parameters'
import { boothCardSchema } from '@/lib/schemas/booth-card'
import { filterParametersSchema } from '@/lib/schemas/filter-parameters'
import { filterStateSchema } from '@/lib/schemas/filter-state'
import { findingDetailSchema } from '@/lib/schemas/finding-detail'
import { testPartsSchema } from '@/lib/schemas/test-attempt'
import { scoreInspection } from '@/lib/scoring/score-inspection'

const through = <T>(value: T): unknown => JSON.parse(JSON.stringify(value))

describe('a booth card', () => {
  const card: BoothCard = {
    polarity: 'DCEN', amps: { min: 120, max: 160 }, volts: { min: 15, max: null }, wireFeedMmPerS: { min: null, max: 55 }, contactTipToWorkMm: { min: 12, max: 12 },
    travelSpeedMmPerS: null, gas: null, gasFlowLPerMin: null, workAngleDeg: { min: 0, max: 45 }, travelAngleDeg: null, travelDirection: 'drag', sidePauseSeconds: null, note: null,
  }

  it('is read as it was written, open ends and single values too', () => {
    expect(boothCardSchema.parse(through(card))).toEqual(card)
  })

  it.each([
    ['a range that starts at its larger end', { amps: { min: 160, max: 120 } }], ['a value below zero', { volts: { min: -1, max: 2 } }], ['an unknown polarity', { polarity: 'DC' }],
    ['an unknown direction', { travelDirection: 'weave' }], ['a missing key', { note: undefined }], ['an extra key', { colour: 'red' }], ['a note without end', { note: 'x'.repeat(501) }],
    ['text for a number', { amps: { min: '120', max: '160' } }], ['a range without an end', { amps: { min: 120 } }],
  ])('is not read with %s', (_what, change) => {
    expect(boothCardSchema.safeParse(through({ ...card, ...change })).success).toBe(false)
  })
})

describe('what a finding says beside its columns', () => {
  it('is read as scoring wrote it, for every finding of a real scorecard, and absent keys stay absent', () => {
    const weld = {
      type: 'fillet', process: 'FCAW-S', position: '2F', progression: null, thicknessMm: 9.525, electrodeDiameterMm: 1.143, nominalLegMm: 6.35, lengthMm: 203.2,
    } as const
    const inspection = {
      stations: [{ atMm: 50, widthMm: 6, legAMm: 6.4, legBMm: 5.9, convexityMm: 1 }, { atMm: 150, widthMm: 6.2 }],
      indications: [{ kind: 'undercut', atMm: 20, lengthMm: 30, depthMm: 0.9, toe: 'A' }, { kind: 'pore', atMm: 80, diameterMm: 1 }],
      lookedFor: ['undercut', 'pore', 'crack'], cratersFilled: null, fusionComplete: true,
    } as const
    const findings = ['shop-bead', 'structural-static.us', 'structural-cyclic.si', 'iso5817-c'].flatMap((id) => scoreInspection(weld, inspection, criteriaById(id)).findings)
    expect(findings.length).toBeGreaterThan(30)
    for (const { rule: _r, verdict: _v, measured: _m, limit: _l, unit: _u, margin: _g, closeCall: _c, where: _w, ...detail } of findings) {
      const read = findingDetailSchema.parse(through(detail))
      expect(read).toEqual(through(detail))
      expect(Object.values(read)).not.toContain(undefined)
    }
    expect(findings.some((finding) => finding.reason !== undefined), 'some were not measured').toBe(true)
    expect(findings.some((finding) => finding.toe === 'A'), 'some name a toe').toBe(true)
  })

  it('needs its source', () => {
    expect(findingDetailSchema.safeParse({}).success).toBe(false)
    expect(findingDetailSchema.safeParse({ source: { title: 'A code', clause: null, status: 'hearsay' } }).success).toBe(false)
    expect(findingDetailSchema.parse({ source: { title: 'A code', clause: null, status: 'memory' } })).toEqual({ source: { title: 'A code', clause: null, status: 'memory' } })
  })
})

describe('the readiness filter’s memory', () => {
  it('is read as it was written, to the last digit', () => {
    const state = absorbCoupon(startState(), { day: 20782, accepted: true, worstMargin: 0.4, attributesGood: true })
    expect(filterStateSchema.parse(through(state))).toEqual(state)
    expect(filterParametersSchema.parse(through(SHIPPED_PARAMETERS))).toEqual(SHIPPED_PARAMETERS)
  })

  it.each([{ day: 1, coupons: -1, mass: [] }, { day: 1, coupons: 1.5, mass: [] }, { day: 'today', coupons: 1, mass: [] }, { day: 1, coupons: 1, mass: ['a'] }, { day: 1, coupons: 1 }, null])('is not %o', (state) => {
    expect(filterStateSchema.safeParse(state).success).toBe(false)
  })
})

describe('what a test examined', () => {
  const parts = {
    visual: 'accept', bends: [{ face: 'root', indications: [{ sizeMm: 1.5, corner: false, fromSlagOrFusion: false }] }], filletBreak: { foldedFlat: false, rootFused: true, inclusionsMm: [0, 2.5] },
  }

  it('is read as it was written, and a part that was no part of it is null', () => {
    expect(testPartsSchema.parse(through(parts))).toEqual(parts)
    expect(testPartsSchema.parse({ visual: null, bends: null, filletBreak: null })).toEqual({ visual: null, bends: null, filletBreak: null })
  })

  it.each([{ visual: 'incomplete' }, { bends: [{ face: 'side', indications: [{ sizeMm: -1, corner: false, fromSlagOrFusion: false }] }] }, { filletBreak: { foldedFlat: true, rootFused: true, inclusionsMm: [null] } }, { passed: true }])('is not read with %o', (change) => {
    expect(testPartsSchema.safeParse({ ...parts, ...change }).success).toBe(false)
  })
})

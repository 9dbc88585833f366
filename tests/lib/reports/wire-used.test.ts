import { describe, expect, it } from 'vitest'
import { wireUsed } from '@/lib/reports/wire-used'

const fillet = { process: 'GMAW', electrodeDiameterMm: 1, weldType: 'fillet', nominalLegMm: 6, lengthMm: 150 } as const
const groove = { ...fillet, weldType: 'groove', nominalLegMm: null } as const
const STEEL = 7.83e-6 // kg/mm³: 0.283 lb/in³ as welding handbooks take it

describe('wire and rod used', () => {
  it('comes from feed and arc time: 100 mm/s of 1 mm solid wire for 60 s', () => {
    const { kg } = wireUsed([{ exercise: groove, passes: [{ wireFeedMmPerS: 100, arcSeconds: 60 }] }])
    expect(kg?.low).toBeCloseTo((Math.PI / 4) * 6000 * STEEL, 4)
    expect(kg?.high).toBe(kg?.low)
  })
  it('comes from the nominal fillet where a pass was not timed: more than the weld metal, some is lost', () => {
    const { kg } = wireUsed([{ exercise: fillet, passes: [{ wireFeedMmPerS: 100, arcSeconds: null }] }])
    expect(kg?.low).toBeGreaterThan(18 * 150 * STEEL)
    expect(kg?.low).toBeLessThan(18 * 150 * STEEL * 1.1)
  })
  it('does not count a coupon it cannot work out, and never as nothing', () => {
    const used = wireUsed([{ exercise: groove, passes: [{ wireFeedMmPerS: null, arcSeconds: 60 }] }, { exercise: groove, passes: [{ wireFeedMmPerS: 0, arcSeconds: 0 }] }])
    expect(used).toEqual({ coupons: 2, counted: 0, kg: null })
  })
})

import { describe, expect, it } from 'vitest'
import type { Rule } from '@/lib/criteria/types'
import { stationCount } from '@/lib/readiness/station-count'
import type { Inspection } from '@/lib/scoring/types'

const source = { title: 'made up for this test', clause: null, status: 'common-practice' } as const
const common = { source, weight: 1, readiness: { as: 'margin', scale: 1 } } as const
const rules: Rule[] = [
  { id: 'width-in-band', kind: 'reading-range', reading: 'width', min: { form: 'fixed', mm: 5 }, max: { form: 'fixed', mm: 8 }, ...common },
  { id: 'width-consistency', kind: 'reading-spread', reading: 'width', max: { form: 'fixed', mm: 2 }, ...common },
  { id: 'leg-size', kind: 'reading-range', reading: 'shortest-leg', min: { form: 'fixed', mm: 5 }, max: null, ...common },
  { id: 'crack', kind: 'absent', of: ['crack'], source, weight: 1, readiness: { as: 'attribute' } },
]
const bead = (...widths: number[]): Inspection => ({
  stations: widths.map((widthMm, i) => ({ atMm: 10 * i, widthMm })), indications: [], lookedFor: [], cratersFilled: true, fusionComplete: true,
})

describe('the spread within a bead', () => {
  it('is pooled over beads about each bead’s own mean', () => {
    // Squares about each mean add up to 2 + 2 + 2 + 2, degrees of freedom to 3 + 3 + 3 + 2.
    const found = stationCount(5, bead(5, 6, 6, 7), [bead(6, 7, 7, 8), bead(4, 5, 5, 6), bead(6, 7, 8)], { rules })
    expect(found?.withinBeadSd['width-in-band']).toBeCloseTo(Math.sqrt(8 / 11), 12)
    expect(found?.used).toBe(4)
    expect(found?.fixed).toBe(5)
  })
  it('counts twice for largest less smallest', () => {
    const { withinBeadSd } = stationCount(5, bead(5, 6, 7), [bead(5, 6, 7), bead(5, 6, 7), bead(5, 6, 7)], { rules })!
    expect(withinBeadSd).toEqual({ 'width-in-band': 1, 'width-consistency': 2 })
  })
  it('is left out where it was read too rarely, and for readings never taken', () => {
    expect(stationCount(5, bead(5, 6, 7), [], { rules })?.withinBeadSd).toEqual({})
  })
  it('has nothing to say of an inspection without stations', () => expect(stationCount(5, bead(), [], { rules })).toBeUndefined())
})

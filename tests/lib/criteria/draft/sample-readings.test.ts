// Readings an author types over a sample coupon, to see on which side of a limit they fall.
import { describe, expect, it } from 'vitest'
import { sampleCoupon } from '@/lib/criteria/draft/sample-coupons'
import { SAMPLE_AS_IT_IS, withReadings, type SampleReadings } from '@/lib/criteria/draft/sample-readings'
import { shopBead } from '@/lib/criteria/sets/shop-bead'
import { scoreInspection } from '@/lib/scoring/score-inspection'
import { weldOfExercise } from '@/lib/scoring/weld-of-exercise'

const typed = (readings: Partial<SampleReadings>, sample = 'faults', units: 'in' | 'mm' = 'in') => withReadings(sampleCoupon(sample), { ...SAMPLE_AS_IT_IS, ...readings }, units)
const read = (...asked: Parameters<typeof typed>) => {
  const found = typed(...asked)
  if (!found.ok) throw new Error(JSON.stringify(found.problems))
  return found.value.inspection
}
const verdict = (rule: string, ...asked: Parameters<typeof typed>) =>
  scoreInspection(weldOfExercise(sampleCoupon('faults').exercise), read(...asked), shopBead).findings.find((finding) => finding.rule === rule)?.verdict

describe('readings typed over a sample', () => {
  it('leave it as it is where the boxes are empty', () => {
    expect(typed({})).toEqual({ ok: true, value: sampleCoupon('faults') })
    expect(typed({ width: '  ' })).toEqual({ ok: true, value: sampleCoupon('faults') })
  })
  it('are read in the unit of the set', () => {
    expect(new Set(read({ width: '1/4' }).stations.map(({ widthMm }) => widthMm))).toEqual(new Set([6.35]))
    expect(read({ width: '7' }, 'faults', 'mm').stations[0]?.widthMm).toBe(7)
  })
  it('put one undercut and one pore in place of the sample’s, and none for 0', () => {
    const kinds = (readings: Partial<SampleReadings>, sample: string) => read(readings, sample).indications.map((each) => [each.kind, 'depthMm' in each ? each.depthMm : 'diameterMm' in each ? each.diameterMm : null])
    expect(kinds({ undercut: '1 mm' }, 'faults')).toEqual([['undercut', 1]])
    expect(kinds({ undercut: '0' }, 'faults')).toEqual([])
    expect(kinds({ pore: '2 mm' }, 'pores')).toEqual([['spatter', null], ['pore', 2]])
    expect(kinds({ pore: '2 mm' }, 'clean')).toEqual([['pore', 2]])
  })
  it('fall on the side of the limit they were typed on', () => {
    expect(verdict('undercut', { undercut: '1/32' })).toBe('accept')
    expect(verdict('undercut', { undercut: '3/64' })).toBe('reject')
  })
  it('say at each box what is no size, no width and too large', () => {
    const found = typed({ width: '0', undercut: 'deep', pore: '3 in' })
    expect(found).toEqual({ ok: false, problems: {
      width: 'A bead has a width. Empty the box for the sample’s own.', undercut: 'This is no size. Write it like 1/32, .05 in or 1 mm.', pore: 'No sample plate has anything that large.',
    } })
  })
})

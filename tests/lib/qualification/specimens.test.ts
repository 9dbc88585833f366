import fc from 'fast-check'
import { expect, it } from 'vitest'
import { judgeGuidedBend, judgeIsoBend, type BendIndication } from '@/lib/qualification/bend'
import { judgeFilletBreak } from '@/lib/qualification/fillet-break'
import { judgeMacroetch, type Macroetch } from '@/lib/qualification/macroetch'
import { isoThicknessQualified, specimensNeeded, thicknessQualified } from '@/lib/qualification/thickness'

const RANK = { accept: 0, replace: 1, reject: 2 } as const
const indication: fc.Arbitrary<BendIndication> = fc.record({
  sizeMm: fc.double({ min: 0, max: 8, noNaN: true }), corner: fc.boolean(), fromSlagOrFusion: fc.boolean(),
})
const system = fc.constantFrom('us' as const, 'si' as const)

it('never improves a bend when a discontinuity grows', () => {
  fc.assert(fc.property(fc.array(indication, { minLength: 1, maxLength: 8 }), fc.nat(), fc.double({ min: 0, max: 8, noNaN: true }), system, (list, pick, more, sys) => {
    const worse = list.map((one, i) => (i === pick % list.length ? { ...one, sizeMm: one.sizeMm + more } : one))
    return RANK[judgeGuidedBend(worse, sys).verdict] >= RANK[judgeGuidedBend(list, sys).verdict]
      && RANK[judgeIsoBend(worse).verdict] >= RANK[judgeIsoBend(list).verdict]
  }))
})

it('never improves a bend when one more is found, in whatever order', () => {
  fc.assert(fc.property(fc.array(indication, { maxLength: 8 }), indication, system, (list, extra, sys) =>
    RANK[judgeGuidedBend([extra, ...list], sys).verdict] >= RANK[judgeGuidedBend(list, sys).verdict]
    && judgeGuidedBend([...list].reverse(), sys).verdict === judgeGuidedBend(list, sys).verdict))
})

it('never improves a fillet break when an inclusion is added', () => {
  const size = fc.double({ min: 0, max: 4, noNaN: true })
  fc.assert(fc.property(fc.array(size, { maxLength: 8 }), size, system, (sizes, extra, sys) => {
    const judge = (inclusionsMm: number[]) => RANK[judgeFilletBreak({ foldedFlat: false, rootFused: true, inclusionsMm }, sys).verdict]
    return judge([...sizes, extra]) >= judge(sizes)
  }))
})

it.each([NaN, -0.1, Infinity])('refuses a size of %f', bad => {
  expect(() => judgeGuidedBend([{ sizeMm: bad, corner: false, fromSlagOrFusion: false }], 'us')).toThrow(RangeError)
  expect(() => judgeIsoBend([{ sizeMm: bad, corner: true, fromSlagOrFusion: false }])).toThrow(RangeError)
  expect(() => judgeFilletBreak({ foldedFlat: true, rootFused: true, inclusionsMm: [bad] }, 'si')).toThrow(RangeError)
  expect(() => judgeMacroetch({ ...sound, undercutMm: bad }, 'si')).toThrow(RangeError)
  expect(() => thicknessQualified({ type: 'groove', thicknessMm: bad }, 'us')).toThrow(RangeError)
  expect(() => specimensNeeded({ type: 'groove', thicknessMm: bad }, 'us')).toThrow(RangeError)
  expect(() => isoThicknessQualified({ type: 'fillet', thicknessMm: bad })).toThrow(RangeError)
})

it.each([0, 2.5, NaN])('refuses %f layers', layers => {
  expect(() => isoThicknessQualified({ type: 'butt', depositedMm: 12, layers })).toThrow(RangeError)
})

it('refuses a unit system it does not know', () => {
  expect(() => judgeGuidedBend([], 'metric' as 'si')).toThrow(RangeError)
})

const sound: Macroetch = {
  type: 'fillet', crackSeen: false, rootFused: true, fusionComplete: true, profileAcceptable: true,
  undercutMm: 0, legAMm: 8, legBMm: 9, nominalLegMm: 8,
}

it.each([
  { crackSeen: null }, { rootFused: null }, { fusionComplete: null }, { profileAcceptable: null }, { undercutMm: null },
  { legAMm: null }, { nominalLegMm: null },
])('leaves a macroetch with %j incomplete', gap => {
  expect(judgeMacroetch({ ...sound, ...gap }, 'si')).toEqual({ verdict: 'incomplete', reasons: ['macroetch-not-examined'] })
})

it('rejects a macroetch on what was seen even when something else was not looked at', () => {
  expect(judgeMacroetch({ ...sound, crackSeen: true, undercutMm: null }, 'si')).toEqual({ verdict: 'reject', reasons: ['crack-seen'] })
  expect(judgeMacroetch({ ...sound, legAMm: 7, legBMm: null }, 'si').reasons).toEqual(['leg-too-small'])
})

it('asks no legs of a groove', () => {
  expect(judgeMacroetch({ ...sound, type: 'groove', legAMm: null, legBMm: null, nominalLegMm: null }, 'si').verdict).toBe('accept')
})

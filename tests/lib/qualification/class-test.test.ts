import { describe, expect, it } from 'vitest'
import { judgeTestParts, type TestPlate } from '@/lib/qualification/class-test'
import type { TestParts } from '@/lib/schemas/test-attempt'

const inches = (n: number): number => n * 25.4
const groove = (inch: number): TestPlate => ({ weldType: 'groove', plateThicknessMm: inches(inch), nominalLegMm: null })
const fillet: TestPlate = { weldType: 'fillet', plateThicknessMm: inches(1 / 2), nominalLegMm: inches(5 / 16) }
const parts = (over: Partial<TestParts>): TestParts => ({ visual: 'accept', bends: null, filletBreak: null, ...over })
const bend = (face: 'face' | 'root' | 'side', sizeMm?: number, corner = false) => ({ face, indications: sizeMm === undefined ? [] : [{ sizeMm, corner, fromSlagOrFusion: false }] })
const goodBreak = { foldedFlat: true, rootFused: true, inclusionsMm: [] }
const goodEtch = { crackSeen: false, rootFused: true, fusionComplete: true, profileAcceptable: true, undercutMm: 0, legAMm: inches(5 / 16), legBMm: inches(3 / 8) }

// Specimens per plate: AWS D1.1/D1.1M:2020 Table 6.11 (from memory). Bend limits: AWS D1.1/D1.1M:2015 clause 4.9.3.3.
describe('a groove test', () => {
  it('of 3/8 in plate passes with a face and a root bend, and is unfinished with one of them', () => {
    expect(judgeTestParts(parts({ bends: [bend('face'), bend('root', 3)] }), groove(3 / 8), 'us')).toEqual({ result: 'pass', reasons: [] })
    expect(judgeTestParts(parts({ bends: [bend('face')] }), groove(3 / 8), 'us')).toEqual({ result: 'incomplete', reasons: ['bends-missing'] })
    expect(judgeTestParts(parts({}), groove(3 / 8), 'us')).toMatchObject({ result: 'incomplete' })
  })

  it('of 1/2 in plate asks for two side bends instead', () => {
    expect(judgeTestParts(parts({ bends: [bend('face'), bend('root')] }), groove(1 / 2), 'us')).toMatchObject({ result: 'incomplete', reasons: ['bends-missing'] })
    expect(judgeTestParts(parts({ bends: [bend('side'), bend('side')] }), groove(1 / 2), 'us')).toMatchObject({ result: 'pass' })
  })

  it('fails by one bend over 1/8 in, in the unit system of the program', () => {
    // 3.1 mm: under 1/8 in (3.175 mm), over 3 mm.
    expect(judgeTestParts(parts({ bends: [bend('face', 3.1), bend('root')] }), groove(3 / 8), 'us')).toMatchObject({ result: 'pass' })
    expect(judgeTestParts(parts({ bends: [bend('face', 3.1), bend('root')] }), groove(3 / 8), 'si')).toMatchObject({ result: 'fail', reasons: ['bend-rejected', 'discontinuity-too-large'] })
  })

  it('waits for another specimen when a corner cracked', () => {
    expect(judgeTestParts(parts({ bends: [bend('face', 8, true), bend('root')] }), groove(3 / 8), 'us')).toMatchObject({ result: 'replace' })
  })
})

describe('a fillet test', () => {
  it('passes by its break, and a macroetch counts when one was made', () => {
    expect(judgeTestParts(parts({ filletBreak: goodBreak }), fillet, 'us')).toEqual({ result: 'pass', reasons: [] })
    expect(judgeTestParts(parts({ filletBreak: goodBreak, macroetch: goodEtch }), fillet, 'us')).toEqual({ result: 'pass', reasons: [] })
    expect(judgeTestParts(parts({ filletBreak: goodBreak, macroetch: { ...goodEtch, crackSeen: true } }), fillet, 'us')).toMatchObject({ result: 'fail', reasons: ['macroetch-rejected', 'crack-seen'] })
    expect(judgeTestParts(parts({ filletBreak: goodBreak, macroetch: { ...goodEtch, legAMm: inches(1 / 4) } }), fillet, 'us')).toMatchObject({ result: 'fail', reasons: ['macroetch-rejected', 'leg-too-small'] })
    expect(judgeTestParts(parts({ filletBreak: goodBreak, macroetch: { ...goodEtch, rootFused: null } }), fillet, 'us')).toMatchObject({ result: 'incomplete' })
  })

  it('takes two root bends where the soundness plate was welded', () => {
    expect(judgeTestParts(parts({ bends: [bend('root'), bend('root')] }), fillet, 'us')).toEqual({ result: 'pass', reasons: [] })
    expect(judgeTestParts(parts({ bends: [bend('root')] }), fillet, 'us')).toMatchObject({ result: 'incomplete', reasons: ['bends-missing'] })
  })
})

describe('the look at the plate', () => {
  it('fails the test alone, for a plate rejected by eye is not cut up', () => {
    expect(judgeTestParts(parts({ visual: 'reject' }), fillet, 'us')).toEqual({ result: 'fail', reasons: ['visual-rejected'] })
  })

  it('does not pass it alone, and is not passed by being left out', () => {
    expect(judgeTestParts(parts({}), fillet, 'us')).toEqual({ result: 'incomplete', reasons: ['breaks-missing'] })
    expect(judgeTestParts(parts({ visual: null, filletBreak: goodBreak }), fillet, 'us')).toEqual({ result: 'incomplete', reasons: ['visual-missing'] })
  })
})

import { expect, it } from 'vitest'
import type { BendJudgement } from '@/lib/qualification/bend'
import { combineTestResult, type BendKind, type TestEvidence } from '@/lib/qualification/test-result'
import { specimensNeeded } from '@/lib/qualification/thickness'

const sound: BendJudgement = { verdict: 'accept', reasons: [] }
const setAside: BendJudgement = { verdict: 'replace', reasons: ['corner-crack-too-large'] }
const bad: BendJudgement = { verdict: 'reject', reasons: ['discontinuity-too-large'] }
const bend = (kind: BendKind, judgement: BendJudgement) => ({ kind, judgement })

const groove: TestEvidence = {
  visual: 'accept', needed: specimensNeeded({ type: 'groove', thicknessMm: 25.4 }, 'us'),
  bends: [bend('side', sound), bend('side', sound)], breaks: [], macroetches: [],
}
const fillet: TestEvidence = {
  visual: 'accept', needed: specimensNeeded({ type: 'fillet', thicknessMm: 12.7 }, 'us'),
  bends: [], breaks: [{ verdict: 'accept', reasons: [] }], macroetches: [{ verdict: 'accept', reasons: [] }],
}

it('passes a groove with a good look and two good side bends', () => {
  expect(combineTestResult(groove)).toEqual({ result: 'pass', reasons: [] })
})

it('passes a fillet with a good look, a good break and a good macroetch', () => {
  expect(combineTestResult(fillet)).toEqual({ result: 'pass', reasons: [] })
})

it.each([
  ['reject', 'fail', 'visual-rejected'],
  ['incomplete', 'incomplete', 'visual-incomplete'],
  [null, 'incomplete', 'visual-missing'],
] as const)('a visual verdict of %s gives %s', (visual, result, reason) => {
  expect(combineTestResult({ ...groove, visual })).toEqual({ result, reasons: [reason] })
})

it('fails on one bad bend, whatever is still missing', () => {
  expect(combineTestResult({ ...groove, visual: null, bends: [bend('side', bad)] })).toEqual({
    result: 'fail', reasons: ['bend-rejected', 'discontinuity-too-large'],
  })
})

it('fails on a bad bend even beside a specimen set aside', () => {
  expect(combineTestResult({ ...groove, bends: [bend('side', setAside), bend('side', bad)] }).result).toBe('fail')
})

it('asks for a replacement, then passes once it is good', () => {
  const bends = [bend('side', sound), bend('side', setAside)]
  expect(combineTestResult({ ...groove, bends })).toEqual({ result: 'replace', reasons: ['replacement-needed', 'corner-crack-too-large'] })
  expect(combineTestResult({ ...groove, bends: [...bends, bend('side', sound)] })).toEqual({ result: 'pass', reasons: [] })
  expect(combineTestResult({ ...groove, bends: [...bends, bend('side', bad)] }).result).toBe('fail')
})

it('asks for a replacement and the specimen that was never tested', () => {
  expect(combineTestResult({ ...groove, bends: [bend('side', setAside)] })).toEqual({
    result: 'replace', reasons: ['replacement-needed', 'corner-crack-too-large', 'bends-missing'],
  })
})

it('does not take two face bends for a face and a root bend', () => {
  const needed = specimensNeeded({ type: 'groove', thicknessMm: 9.525 }, 'us')
  expect(combineTestResult({ ...groove, needed, bends: [bend('face', sound), bend('face', sound)] })).toEqual({ result: 'incomplete', reasons: ['bends-missing'] })
  expect(combineTestResult({ ...groove, needed, bends: [bend('face', sound), bend('root', sound)] }).result).toBe('pass')
})

it('leaves a fillet test without its break or its macroetch incomplete', () => {
  expect(combineTestResult({ ...fillet, breaks: [] })).toEqual({ result: 'incomplete', reasons: ['breaks-missing'] })
  expect(combineTestResult({ ...fillet, macroetches: [] })).toEqual({ result: 'incomplete', reasons: ['macroetches-missing'] })
  expect(combineTestResult({ ...fillet, macroetches: [{ verdict: 'incomplete', reasons: ['macroetch-not-examined'] }] })).toEqual({
    result: 'incomplete', reasons: ['macroetch-incomplete'],
  })
})

it('fails a fillet test on its break or its macroetch', () => {
  expect(combineTestResult({ ...fillet, breaks: [{ verdict: 'reject', reasons: ['root-not-fused'] }] })).toEqual({
    result: 'fail', reasons: ['break-rejected', 'root-not-fused'],
  })
  expect(combineTestResult({ ...fillet, macroetches: [{ verdict: 'reject', reasons: ['crack-seen'] }] }).result).toBe('fail')
})

it('refuses a test that asks for no specimen, or half of one', () => {
  const none = { faceBends: 0, rootBends: 0, sideBends: 0, breaks: 0, macroetches: 0 }
  expect(() => combineTestResult({ ...groove, needed: none })).toThrow(RangeError)
  expect(() => combineTestResult({ ...groove, needed: { ...none, sideBends: 1.5 } })).toThrow(RangeError)
})

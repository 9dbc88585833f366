import { describe, expect, it } from 'vitest'
import { placeEvidence, READING_RULES, readingsEvidence } from '@/lib/coaching/readings-evidence'
import type { Finding, Indication, Inspection, Scorecard, Station, Weld } from '@/lib/scoring/types'

const weld: Weld = { type: 'fillet', process: 'FCAW-S', position: '2F', progression: null, thicknessMm: 12, electrodeDiameterMm: 1.6, nominalLegMm: 8, lengthMm: 300 }
const nothing: Scorecard = { criteriaId: 'x', scoringVersion: '1', verdict: 'accept', mark: 90, findings: [] }
const look = (stations: readonly Station[], indications: readonly Indication[] = []): Inspection => ({ stations, indications, lookedFor: [], cratersFilled: null, fusionComplete: null })
const codes = (inspection: Inspection, joint = weld) => readingsEvidence(joint, inspection, nothing).map(one => one.code)
const widths = (...pairs: [at: number, width: number][]) => look(pairs.map(([atMm, widthMm]) => ({ atMm, widthMm })))

describe('the last third of the bead', () => {
  it.each([
    [9.0, []], [8.99, ['narrower-last-third']], [11.0, []], [11.01, ['wider-last-third']],
  ] as const)('against 10 mm before it, %f mm says %j', (last, expected) => {
    expect(codes(widths([50, 10], [150, 10], [250, last]))).toEqual(expected)
  })

  it('begins at two thirds of the length', () => {
    expect(codes(widths([50, 10], [150, 10], [200, 8]))).toEqual(['narrower-last-third'])
    expect(codes(widths([50, 10], [150, 10], [199, 8]))).toEqual([])
    expect(readingsEvidence(weld, widths([50, 10], [150, 10], [200, 8], [290, 8.4]), nothing)).toEqual([{ code: 'narrower-last-third', beforeMm: 10, lastMm: 8.2 }])
  })

  it('needs two stations before it and one in it, and leaves out what was not measured', () => {
    expect(codes(widths([150, 10], [250, 7]))).toEqual([])
    expect(codes(look([{ atMm: 50 }, { atMm: 150, widthMm: 10 }, { atMm: 250, widthMm: 7 }]))).toEqual([])
  })

  it('takes the mean on either side', () => {
    expect(readingsEvidence(weld, widths([50, 9], [150, 11], [220, 8], [280, 9]), nothing)).toContainEqual({ code: 'narrower-last-third', beforeMm: 10, lastMm: 8.5 })
  })
})

describe('the spread of widths', () => {
  it('speaks when it passes a quarter of the mean, and not on it', () => {
    expect(codes(widths([20, 8.75], [60, 10], [100, 11.25]))).toEqual([])
    expect(codes(widths([20, 8.74], [60, 10], [100, 11.26]))).toEqual(['widths-vary'])
  })

  it('needs three stations', () => {
    expect(codes(widths([20, 5], [60, 15]))).toEqual([])
    expect(codes(widths([20, 5], [60, 10], [100, 15]))).toEqual(['widths-vary'])
  })
})

describe('the legs', () => {
  const legs = (legAMm: number, legBMm: number) => look([{ atMm: 50, legAMm, legBMm }])
  it('differ when the shorter is more than 15 % under the longer', () => {
    expect(codes(legs(10, 8.5))).toEqual([])
    expect(codes(legs(10, 8.49))).toEqual(['legs-differ'])
  })

  it('tell which one is longer, by the position', () => {
    expect(readingsEvidence(weld, legs(10, 7), nothing)).toEqual([{ code: 'legs-differ', longer: 'upper', longMm: 10, shortMm: 7 }])
    expect(readingsEvidence(weld, legs(7, 10), nothing)).toEqual([{ code: 'legs-differ', longer: 'lower', longMm: 10, shortMm: 7 }])
    expect(readingsEvidence({ ...weld, position: '3F' }, legs(10, 7), nothing)).toMatchObject([{ longer: 'left' }])
    expect(readingsEvidence({ ...weld, position: '1F' }, legs(7, 10), nothing)).toMatchObject([{ longer: 'right' }])
    expect(readingsEvidence({ ...weld, position: '4F' }, legs(7, 10), nothing)).toMatchObject([{ longer: 'lower' }])
  })

  it('say nothing when one of them was not read', () => {
    expect(codes(look([{ atMm: 50, legAMm: 10 }]))).toEqual([])
  })
})

describe('undercut', () => {
  const at = (toe?: 'A' | 'B', depthMm = 1): Indication => ({ kind: 'undercut', atMm: 50, lengthMm: 20, depthMm, ...(toe && { toe }) })
  it('is on one toe, on both, or nobody wrote down where', () => {
    expect(readingsEvidence(weld, look([], [at('A'), at('A')]), nothing)).toEqual([{ code: 'undercut-one-toe', toe: 'upper' }])
    expect(codes(look([], [at('A'), at('B')]))).toEqual(['undercut-both-toes'])
    expect(codes(look([], [at('A'), at()]))).toEqual([])
    expect(codes(look([], [at(), at('A')]))).toEqual([])
  })

  it('does not count where it is no depth at all', () => {
    expect(codes(look([], [at('A'), at('B', 0)]))).toEqual(['undercut-one-toe'])
  })
})

describe('pores', () => {
  const pores = (...places: number[]) => look([], places.map(atMm => ({ kind: 'pore' as const, atMm, diameterMm: 1 })))
  it('belong to the start within 25 mm of it, when they are more than half', () => {
    expect(codes(pores(25))).toEqual(['pores-near-start'])
    expect(codes(pores(25.1))).toEqual([])
    expect(codes(pores(5, 290))).toEqual([])
    expect(codes(pores(5, 6, 290))).toEqual(['pores-near-start'])
  })

  it('belong to the start within a quarter of a short weld', () => {
    expect(codes(pores(10), { ...weld, lengthMm: 40 })).toEqual(['pores-near-start'])
    expect(codes(pores(10.1), { ...weld, lengthMm: 40 })).toEqual([])
  })

  it('are spread when three or more reach over more than half of the weld', () => {
    expect(codes(pores(60, 100, 210))).toEqual([])
    expect(codes(pores(60, 100, 210.1))).toEqual(['pores-spread'])
    expect(codes(pores(60, 290))).toEqual([])
  })

  it('lie where their middle lies', () => {
    expect(codes(look([], [{ kind: 'pore', atMm: 20, lengthMm: 10 }]))).toEqual(['pores-near-start'])
    expect(codes(look([], [{ kind: 'pore', atMm: 20, lengthMm: 10.2 }]))).toEqual([])
  })
})

describe('where the fault lies', () => {
  const finding = (fromMm: number, toMm = fromMm, verdict: 'accept' | 'reject' = 'reject'): Finding => ({
    rule: 'crater', verdict, measured: 1, limit: { min: null, max: 0 }, unit: 'count', margin: -1, closeCall: false, where: { fromMm, toMm },
    source: { title: 'x', clause: null, status: 'memory' },
  })
  const places = (...input: Parameters<typeof finding>) => placeEvidence(finding(...input), weld, look([], [{ kind: 'poor-restart', atMm: 100 }])).map(one => one.code)

  it('is at the end within 25 mm of it, or within a quarter of a short weld', () => {
    expect(places(275)).toEqual(['at-end'])
    expect(places(274.9)).toEqual([])
    expect(placeEvidence(finding(30), { ...weld, lengthMm: 40 }, look([])).map(one => one.code)).toEqual(['at-end'])
    expect(placeEvidence(finding(29.9), { ...weld, lengthMm: 40 }, look([]))).toEqual([])
  })

  it('is at a restart within 13 mm of it on either side', () => {
    expect(READING_RULES.restartMm).toBe(13)
    expect(places(113)).toEqual(['at-restart'])
    expect(places(113.1)).toEqual([])
    expect(places(60, 87)).toEqual(['at-restart'])
    expect(places(60, 86.9)).toEqual([])
  })

  it('says nothing of a rule that accepts', () => {
    expect(places(290, 290, 'accept')).toEqual([])
  })
})

it('counts slag and spatter left', () => {
  const dirty = look([], [{ kind: 'slag', atMm: 1 }, { kind: 'spatter', atMm: 2 }, { kind: 'spatter', atMm: 3 }])
  expect(readingsEvidence(weld, dirty, nothing)).toEqual([{ code: 'slag-seen', count: 1 }, { code: 'spatter-seen', count: 2 }])
})

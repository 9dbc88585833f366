// Outside sources beside each group. 1/8 in (3 mm) as the lower end, and specimen counts, are from memory (AWS D1.1 Table 6.11).
import { describe, expect, it } from 'vitest'
import { judgeMacroetch, type Macroetch } from '@/lib/qualification/macroetch'
import { FILLET_DIHEDRAL_DEG, isoThicknessQualified, specimensNeeded, thicknessQualified } from '@/lib/qualification/thickness'

const IN = 25.4
const range = (answer: ReturnType<typeof thicknessQualified>) => (answer.kind === 'range' ? [answer.minMm, answer.maxMm] : answer.reason)

// US Army Corps of Engineers TI 809-26 (1 March 2000) on AWS D1.1: 3/8 in covers to 3/4 in, under 1 in covers twice the plate, 1 in covers all.
describe('thickness a groove plate covers', () => {
  it.each([
    ['us', (3 / 8) * IN, [IN / 8, (3 / 4) * IN]],
    ['us', (1 / 2) * IN, [IN / 8, 1 * IN]],
    ['us', (15 / 16) * IN, [IN / 8, (15 / 8) * IN]],
    ['us', 1 * IN, [IN / 8, null]],
    ['us', (1 - 1 / 64) * IN, [IN / 8, (2 - 1 / 32) * IN]],
    ['us', (3 / 8 - 1 / 64) * IN, 'plate-too-thin'],
    ['si', 10, [3, 20]],
    ['si', 9.5, 'plate-too-thin'],
    ['si', 24.5, [3, 49]],
    ['si', 25, [3, null]],
  ] as const)('in %s a plate of %f mm covers %j', (system, thicknessMm, expected) => {
    expect(range(thicknessQualified({ type: 'groove', thicknessMm }, system))).toEqual(expected)
  })
})

// University laboratory notes citing AWS D1.1 Fig. 4.36 (secondary).
it('gives a fillet test no upper limit', () => {
  expect(range(thicknessQualified({ type: 'fillet', thicknessMm: 12.7 }, 'us'))).toEqual([IN / 8, null])
  expect(range(thicknessQualified({ type: 'fillet', thicknessMm: 12 }, 'si'))).toEqual([3, null])
  expect(FILLET_DIHEDRAL_DEG).toEqual({ min: 60, max: 135 })
})

// From memory.
describe('specimens a plate must give', () => {
  it.each([
    ['us', (3 / 8) * IN, { faceBends: 1, rootBends: 1, sideBends: 0 }],
    ['us', (3 / 8 + 1 / 64) * IN, { faceBends: 0, rootBends: 0, sideBends: 2 }],
    ['us', 1 * IN, { faceBends: 0, rootBends: 0, sideBends: 2 }],
    ['si', 10, { faceBends: 1, rootBends: 1, sideBends: 0 }],
    ['si', 12, { faceBends: 0, rootBends: 0, sideBends: 2 }],
  ] as const)('in %s a groove plate of %f mm', (system, thicknessMm, expected) => {
    expect(specimensNeeded({ type: 'groove', thicknessMm }, system)).toEqual({ ...expected, breaks: 0, macroetches: 0 })
  })

  it('asks a fillet T-joint for a break and a macroetch, and the soundness plate for two root bends', () => {
    expect(specimensNeeded({ type: 'fillet', thicknessMm: 12.7 }, 'us')).toEqual({ faceBends: 0, rootBends: 0, sideBends: 0, breaks: 1, macroetches: 1 })
    expect(specimensNeeded({ type: 'fillet', thicknessMm: 9.525, filletPlate: 'soundness' }, 'us')).toEqual({ faceBends: 0, rootBends: 2, sideBends: 0, breaks: 0, macroetches: 0 })
  })
})

// DIN EN ISO 9606-1:2013 designation examples: s15 covers 3 mm and over, fillet t10 covers 3 mm and over (secondary). The rest from memory.
describe('thickness an ISO 9606-1 test covers', () => {
  it.each([
    [{ type: 'butt', depositedMm: 15, layers: 3 }, [3, null]],
    [{ type: 'fillet', thicknessMm: 10 }, [3, null]],
    [{ type: 'fillet', thicknessMm: 3 }, [3, null]],
    [{ type: 'fillet', thicknessMm: 2.9 }, [2.9, 5.8]],
    [{ type: 'fillet', thicknessMm: 1 }, [1, 3]],
    [{ type: 'butt', depositedMm: 1, layers: 1 }, [1, 3]],
    [{ type: 'butt', depositedMm: 2, layers: 1 }, [2, 4]],
    [{ type: 'butt', depositedMm: 3, layers: 1 }, [3, 6]],
    [{ type: 'butt', depositedMm: 11.9, layers: 4 }, [3, 23.8]],
    [{ type: 'butt', depositedMm: 12, layers: 3 }, [3, null]],
    [{ type: 'butt', depositedMm: 12, layers: 2 }, 'too-few-layers'],
    [{ type: 'butt', depositedMm: 12, layers: null }, 'too-few-layers'],
  ] as const)('%j covers %j', (piece, expected) => {
    expect(range(isoThicknessQualified(piece))).toEqual(expected)
  })
})

// Fusion to the root: laboratory notes citing AWS D1.1 (secondary). Undercut of 1/32 in (1 mm), legs to size, no cracks: from memory.
describe('macroetch', () => {
  const sound: Macroetch = {
    type: 'fillet', crackSeen: false, rootFused: true, fusionComplete: true, profileAcceptable: true,
    undercutMm: 0, legAMm: 8, legBMm: 8, nominalLegMm: 8,
  }
  it.each([
    ['si', 1, 'accept'], ['si', 1.01, 'reject'], ['us', IN / 32, 'accept'], ['us', IN / 32 + 0.01, 'reject'],
  ] as const)('in %s an undercut of %f mm is %s', (system, undercutMm, verdict) => {
    expect(judgeMacroetch({ ...sound, undercutMm }, system).verdict).toBe(verdict)
  })

  it.each([
    [{ crackSeen: true }, 'crack-seen'],
    [{ rootFused: false }, 'root-not-fused'],
    [{ fusionComplete: false }, 'fusion-incomplete'],
    [{ profileAcceptable: false }, 'profile-not-acceptable'],
    [{ legBMm: 7.99 }, 'leg-too-small'],
  ] as const)('%j is rejected for %s', (change, reason) => {
    expect(judgeMacroetch({ ...sound, ...change }, 'si')).toEqual({ verdict: 'reject', reasons: [reason] })
  })
})

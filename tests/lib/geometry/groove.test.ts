import fc from 'fast-check'
import { expect, it } from 'vitest'
import { grooveArea, grooveWidth, reinforcementArea, reinforcementHeight } from '@/lib/geometry/groove'
import { weldMetalKg, weldVolume, weldVolumeOfSections } from '@/lib/geometry/weld-metal'

const plate = { thicknessMm: 10, includedAngleDeg: 90, rootOpeningMm: 2, rootFaceMm: 0 }

it('fills a square-angled groove by hand: two triangles of 10 by 10 and a slot of 2 by 10', () => {
  expect(grooveWidth(plate)).toBeCloseTo(22, 9)
  expect(grooveArea(plate)).toBeCloseTo(120, 9)
})

it('leaves the root face unbevelled, and a square groove with its slot alone', () => {
  expect(grooveArea({ ...plate, rootFaceMm: 2 })).toBeCloseTo(20 + 64, 9)
  expect(grooveArea({ ...plate, includedAngleDeg: 0 })).toBeCloseTo(20, 9)
  expect(grooveArea({ ...plate, rootFaceMm: 10, rootOpeningMm: 0 })).toBeCloseTo(0, 9)
})

it('adds up the groove from thin slices', () => {
  const angle = fc.double({ min: 0, max: 120, noNaN: true })
  fc.assert(fc.property(fc.double({ min: 3, max: 40, noNaN: true }), angle, fc.double({ min: 0, max: 6, noNaN: true }), fc.double({ min: 0, max: 2, noNaN: true }), (thicknessMm, includedAngleDeg, rootOpeningMm, rootFaceMm) => {
    const slices = 2000
    let sum = 0
    for (let i = 0; i < slices; i += 1) {
      const height = ((i + 0.5) / slices) * thicknessMm
      sum += (rootOpeningMm + 2 * Math.max(0, height - rootFaceMm) * Math.tan((includedAngleDeg / 2 / 180) * Math.PI)) * (thicknessMm / slices)
    }
    expect(grooveArea({ thicknessMm, includedAngleDeg, rootOpeningMm, rootFaceMm }) / Math.max(sum, 1)).toBeCloseTo(sum / Math.max(sum, 1), 4)
  }))
})

it('counts reinforcement from the higher plate and none when flush or below', () => {
  expect(reinforcementHeight(12.5, 10, 10.5)).toBe(2)
  expect(reinforcementHeight(10, 10, 10)).toBe(0)
  expect(reinforcementHeight(9.5, 10, 9)).toBe(-0.5)
  expect(reinforcementArea(20, 3)).toBeCloseTo(40.7, 1) // radius 18.17, half angle 33.4°; two thirds of 20 × 3 is 40
  expect(reinforcementArea(20, 0)).toBe(0)
  expect(reinforcementArea(20, -1)).toBe(0)
})

it('weighs a weld by its volume', () => {
  expect(weldVolume(32, 300)).toBe(9600)
  expect(weldMetalKg(32, 300)).toBeCloseTo(0.0752, 4) // 9.6 cm³ at 7.833 g/cm³
})

it('lets each measured section stand for the stretch half-way to its neighbours, whatever their order', () => {
  const sections = [{ atMm: 20, areaMm2: 30 }, { atMm: 80, areaMm2: 50 }]
  expect(weldVolumeOfSections(sections, 100)).toBeCloseTo(30 * 50 + 50 * 50, 9)
  expect(weldVolumeOfSections([...sections].reverse(), 100)).toBeCloseTo(4000, 9)
  expect(weldVolumeOfSections([{ atMm: 50, areaMm2: 32 }], 100)).toBe(3200)
  expect(weldVolumeOfSections([{ atMm: 50, areaMm2: 30 }, { atMm: 50, areaMm2: 40 }], 100)).toBe(3500)
})

it.each([
  { thicknessMm: 0 }, { includedAngleDeg: 180 }, { includedAngleDeg: -1 }, { rootOpeningMm: -1 }, { rootFaceMm: 11 }, { rootFaceMm: -1 }, { thicknessMm: Number.NaN },
])('refuses a groove with %j', (wrong) => {
  expect(() => grooveArea({ ...plate, ...wrong })).toThrow(RangeError)
})

it('refuses an impossible weld', () => {
  expect(() => weldVolume(-1, 100)).toThrow(RangeError)
  expect(() => weldVolume(10, 0)).toThrow(RangeError)
  expect(() => weldVolumeOfSections([], 100)).toThrow(RangeError)
  expect(() => weldVolumeOfSections([{ atMm: 101, areaMm2: 1 }], 100)).toThrow(RangeError)
  expect(() => weldVolumeOfSections([{ atMm: -1, areaMm2: 1 }], 100)).toThrow(RangeError)
  expect(() => weldVolumeOfSections([{ atMm: 1, areaMm2: Number.NaN }], 100)).toThrow(RangeError)
  expect(() => reinforcementHeight(Number.NaN, 1, 1)).toThrow(RangeError)
  expect(() => reinforcementArea(20, Number.NaN)).toThrow(RangeError)
})

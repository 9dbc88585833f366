import fc from 'fast-check'
import { expect, it } from 'vitest'
import { faceWidthOfLegs, governingThickness, legOfThroat, maximumFilletLegAlongEdge, minimumFilletLeg, minimumFilletLength, throatOfLegs } from '@/lib/geometry/fillet'

const leg = fc.double({ min: 0.5, max: 50, noNaN: true })
const inch = (size: number): number => size * 25.4

it('does not care which leg comes first', () => {
  fc.assert(fc.property(leg, leg, (a, b) => {
    expect(throatOfLegs(a, b)).toBeCloseTo(throatOfLegs(b, a), 12)
    expect(faceWidthOfLegs(a, b)).toBe(faceWidthOfLegs(b, a))
  }))
})

it('keeps the throat under either leg, and throat times face is leg times leg', () => {
  fc.assert(fc.property(leg, leg, (a, b) => {
    expect(throatOfLegs(a, b)).toBeLessThan(Math.min(a, b))
    expect(throatOfLegs(a, b) * faceWidthOfLegs(a, b)).toBeCloseTo(a * b, 8)
  }))
})

it('gives back the equal leg from its throat', () => {
  fc.assert(fc.property(leg, (a) => {
    expect(legOfThroat(throatOfLegs(a, a))).toBeCloseTo(a, 9)
  }))
})

it.each([
  ['us', inch(1 / 4), inch(1 / 8)], ['us', inch(1 / 4) + 0.01, inch(3 / 16)], ['us', inch(1 / 2), inch(3 / 16)], ['us', inch(1 / 2) + 0.01, inch(1 / 4)],
  ['us', inch(3 / 4), inch(1 / 4)], ['us', inch(3 / 4) + 0.01, inch(5 / 16)], ['us', inch(4), inch(5 / 16)],
  ['si', 6, 3], ['si', 6.01, 5], ['si', 12, 5], ['si', 12.01, 6], ['si', 20, 6], ['si', 20.01, 8], ['si', 100, 8],
] as const)('%s: a thickness of %d mm asks for %d mm', (system, thickness, expected) => {
  expect(minimumFilletLeg(thickness, system)).toBeCloseTo(expected, 9)
})

it('keeps the two unit systems apart: 1/4 in plate is over the 6 mm step', () => {
  expect(minimumFilletLeg(inch(1 / 4), 'us')).toBeCloseTo(3.175, 9)
  expect(minimumFilletLeg(inch(1 / 4), 'si')).toBe(5)
})

it('asks for 3/16 in (5 mm) at least under cyclic loading', () => {
  expect(minimumFilletLeg(3, 'us', 'cyclic')).toBeCloseTo(inch(3 / 16), 9)
  expect(minimumFilletLeg(3, 'si', 'cyclic')).toBe(5)
  expect(minimumFilletLeg(25, 'si', 'cyclic')).toBe(8)
})

it('is governed by the thinner part with low hydrogen and by the thicker without', () => {
  expect(governingThickness({ oneMm: 6, otherMm: 20, lowHydrogen: true })).toBe(6)
  expect(governingThickness({ oneMm: 6, otherMm: 20, lowHydrogen: false })).toBe(20)
})

it('leaves an edge to be seen from 1/4 in (6 mm) on', () => {
  expect(maximumFilletLegAlongEdge(inch(1 / 4) - 0.01, 'us')).toBeCloseTo(inch(1 / 4) - 0.01, 9)
  expect(maximumFilletLegAlongEdge(inch(1 / 4), 'us')).toBeCloseTo(inch(3 / 16), 9)
  expect(maximumFilletLegAlongEdge(5.9, 'si')).toBe(5.9)
  expect(maximumFilletLegAlongEdge(6, 'si')).toBe(4)
  expect(minimumFilletLength(8)).toBe(32)
})

it.each([0, -1, Number.NaN, Infinity])('refuses %d as a size', (bad) => {
  expect(() => throatOfLegs(bad, 5)).toThrow(RangeError)
  expect(() => faceWidthOfLegs(5, bad)).toThrow(RangeError)
  expect(() => legOfThroat(bad)).toThrow(RangeError)
  expect(() => minimumFilletLeg(bad, 'us')).toThrow(RangeError)
  expect(() => maximumFilletLegAlongEdge(bad, 'si')).toThrow(RangeError)
  expect(() => governingThickness({ oneMm: 6, otherMm: bad, lowHydrogen: true })).toThrow(RangeError)
  expect(() => minimumFilletLength(bad)).toThrow(RangeError)
})

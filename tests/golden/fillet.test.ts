// Outside: fillet arithmetic as handbooks print it (throat 0.707 of the leg; ISO a = 0.707 z), 3-4-5 triangles; the weld metal
// example of ESAB, Calculating Filler Metal Consumption; least fillet sizes of AWS D1.1 as a research institute's FAQ and AISC 360
// Table J2.4 give them; largest sizes along an edge from AISC 360 J2.2b.
import { expect, it } from 'vitest'
import { faceWidthOfLegs, legOfThroat, maximumFilletLegAlongEdge, minimumFilletLeg, throatOfLegs } from '@/lib/geometry/fillet'
import { filletProfile } from '@/lib/geometry/fillet-profile'
import { weldMetalKg } from '@/lib/geometry/weld-metal'
import { kg, toPounds } from '@/lib/units/mass'
import { parseLength } from '@/lib/units/length'

const inch = (text: string): number => parseLength(text, 'in')

it.each([
  ['1/4', '1/4', 0.177], // printed in several handbooks
  ['5/16', '5/16', 0.221],
  ['1/4', '1/2', 0.224],
  ['3/8', '1/2', 0.3], // 3-4-5 triangle: exact
])('legs %s and %s in have a throat of %d in', (a, b, throat) => {
  expect(throatOfLegs(inch(a), inch(b)) / 25.4).toBeCloseTo(throat, 3)
})

it.each([['1/4', '1/2', 0.559], ['3/8', '1/2', 0.625], ['1/4', '1/4', 0.354]])('legs %s and %s in have a face %d in wide', (a, b, width) => {
  expect(faceWidthOfLegs(inch(a), inch(b)) / 25.4).toBeCloseTo(width, 3)
})

it.each([[6, 4.24], [8, 5.66]])('ISO: z %d mm is a %d mm, and back', (z, a) => {
  expect(throatOfLegs(z, z)).toBeCloseTo(a, 2)
  expect(legOfThroat(throatOfLegs(z, z))).toBeCloseTo(z, 12)
})

it('a concave fillet takes its leg from its throat, T / 0.707 (rule of thumb in print)', () => {
  const { effectiveThroatMm, sizeMm } = filletProfile(inch('5/16'), inch('5/16'), -inch('1/32'))
  expect(sizeMm.a / (effectiveThroatMm / 0.7071)).toBeCloseTo(1, 4)
})

it('a 1/2 by 1/2 in fillet is 0.424 lb of weld metal a foot (ESAB, Calculating Filler Metal Consumption)', () => {
  const { areaMm2 } = filletProfile(inch('1/2'), inch('1/2'), 0)
  expect(toPounds(kg(weldMetalKg(areaMm2, inch('12'))))).toBeCloseTo(0.4245, 6) // 0.5 × 0.5 × 0.5 × 12 × 0.283, printed 0.424
})

it.each([
  ['1/4', '1/8', 6, 3], ['1/2', '3/16', 12, 5], ['3/4', '1/4', 20, 6], ['1', '5/16', 25, 8],
])('least fillet up to %s in: %s in; up to %d mm: %d mm (D1.1, AISC 360 Table J2.4)', (thickness, leg, thicknessMm, legMm) => {
  expect(minimumFilletLeg(inch(thickness), 'us')).toBeCloseTo(inch(leg), 9)
  expect(minimumFilletLeg(thicknessMm, 'si')).toBe(legMm)
})

it('largest fillet along an edge: T under 1/4 in, T - 1/16 in from 1/4 in on (AISC 360 J2.2b)', () => {
  expect(maximumFilletLegAlongEdge(inch('3/16'), 'us')).toBeCloseTo(inch('3/16'), 9)
  expect(maximumFilletLegAlongEdge(inch('3/8'), 'us')).toBeCloseTo(inch('5/16'), 9)
})

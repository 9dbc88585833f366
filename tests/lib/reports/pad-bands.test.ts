import { expect, it } from 'vitest'
import { criteriaById } from '@/lib/criteria/catalogue'
import { isAllowed, padBands } from '@/lib/reports/pad-bands'
import type { Weld } from '@/lib/scoring/types'
import { gaugeSteps } from '@/lib/units/gauge-steps'

const IN = 25.4
const fillet: Weld = { type: 'fillet', process: 'FCAW-S', position: '2F', progression: null, thicknessMm: IN * 3 / 8, electrodeDiameterMm: IN / 16, nominalLegMm: IN / 4, lengthMm: 6 * IN }
const labels = (field: 'widthMm' | 'legAMm' | 'convexityMm', criteria: string): string[] => {
  const band = padBands(fillet, criteriaById(criteria), [field])[field]
  return band ? gaugeSteps(band.expected, 'in32', { least: band.fromZero ? 0 : 1 }).map((step) => step.label) : []
}

it('shows the width band of a shop bead, five to six wire diameters, and marks it', () => {
  const band = padBands(fillet, criteriaById('shop-bead'), ['widthMm']).widthMm
  expect(band?.allowed?.minMm).toBeCloseTo(IN * 5 / 16, 9)
  expect(band?.allowed?.maxMm).toBeCloseTo(IN * 6 / 16, 9)
  const inside = gaugeSteps(band?.expected ?? { minMm: 0, maxMm: 0 }, 'in32').filter((step) => isAllowed(step.valueMm, band?.allowed ?? null)).map((step) => step.label)
  expect(inside).toEqual(['5/16 in', '11/32 in', '3/8 in'])
})

it('has the leg asked for and sizes to either side in reach, on the first page', () => {
  expect(labels('legAMm', 'structural-static.us')).toEqual(expect.arrayContaining(['7/32 in', '1/4 in', '9/32 in', '5/16 in', '3/8 in']))
  expect(labels('widthMm', 'structural-static.us')).toEqual(expect.arrayContaining(['3/8 in', '13/32 in', '7/16 in', '15/32 in']))
})

it('begins small sizes at nothing: a face without convexity is a reading', () => {
  expect(labels('convexityMm', 'structural-static.us').slice(0, 3)).toEqual(['0 in', '1/32 in', '1/16 in'])
})

it('marks nothing where the limit turns on a width not read yet', () => {
  expect(padBands(fillet, criteriaById('structural-static.us'), ['convexityMm']).convexityMm?.allowed).toBeNull()
})

it('has no pad for an angle', () => {
  expect(padBands(fillet, criteriaById('shop-bead'), ['toeAngleDeg'])).toEqual({})
})

it('counts a limit met exactly as inside, and nothing as inside where there is no limit', () => {
  expect(isAllowed(6.35, { minMm: 6.35, maxMm: null })).toBe(true)
  expect(isAllowed(6.34, { minMm: 6.35, maxMm: null })).toBe(false)
  expect(isAllowed(3.2, { minMm: null, maxMm: 3.1 })).toBe(false)
  expect(isAllowed(6.35, { minMm: null, maxMm: null })).toBe(false)
  expect(isAllowed(6.35, null)).toBe(false)
})

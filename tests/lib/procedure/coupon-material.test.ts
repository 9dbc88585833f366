import { expect, it } from 'vitest'
import { couponMaterial, materialCost } from '@/lib/procedure/coupon-material'
import { wireFedKg } from '@/lib/procedure/wire'

const timed = { wireFeedMmPerS: 60, arcSeconds: 60 }
const coupon = { process: 'GMAW', plates: [{ lengthMm: 150, widthMm: 75, thicknessMm: 10 }, { lengthMm: 150, widthMm: 75, thicknessMm: 10 }], electrodeDiameterMm: 1.2, passes: [timed, timed], weldMetalKg: 0.05, gasFlowLPerMin: 15 } as const

it('adds up plate, wire and gas', () => {
  const use = couponMaterial(coupon)
  const wire = wireFedKg({ feedMmPerS: 60, diameterMm: 1.2, arcSeconds: 120 })
  expect(use.plateKg).toBeCloseTo(1.7625, 3)
  expect(use.consumableKg?.low).toBeCloseTo(wire, 12)
  expect(use.consumableKg?.high).toBeCloseTo(wire, 12)
  expect(use.gasLitres).toBe(30)
})

it('bounds cored wire, whose mass is not known exactly', () => {
  const use = couponMaterial({ ...coupon, process: 'FCAW-S' })
  expect((use.consumableKg?.high ?? 0) / (use.consumableKg?.low ?? 1)).toBeCloseTo(0.9 / 0.75, 9)
})

it('falls back on the weld metal called for when a pass was not timed, or nothing is fed', () => {
  expect(couponMaterial({ ...coupon, passes: [timed, { ...timed, arcSeconds: null }] }).consumableKg?.low).toBeCloseTo(0.05 / 0.96, 12)
  expect(couponMaterial({ ...coupon, passes: [] }).consumableKg?.low).toBeCloseTo(0.05 / 0.96, 12)
  expect(couponMaterial({ ...coupon, process: 'SMAW' }).consumableKg?.low).toBeCloseTo(0.05 / 0.62, 12)
})

it('never takes what was not written down for nothing', () => {
  expect(couponMaterial({ ...coupon, plates: null, passes: [{ wireFeedMmPerS: null, arcSeconds: null }], weldMetalKg: null, gasFlowLPerMin: null })).toEqual({ plateKg: null, consumableKg: null, gasLitres: null })
  expect(couponMaterial({ ...coupon, passes: [timed, { ...timed, arcSeconds: null }] }).gasLitres).toBeNull()
})

it('uses no gas where the process has none', () => {
  const { gasFlowLPerMin: _, ...gasless } = coupon
  expect(couponMaterial({ ...gasless, process: 'FCAW-S' }).gasLitres).toBe(0)
})

it('prices all of it, or says what is missing', () => {
  const use = { plateKg: 2, consumableKg: { low: 0.1, high: 0.2 }, gasLitres: 500 }
  expect(materialCost(use, { platePerKg: 1.5, consumablePerKg: 4, gasPerM3: 6 })).toEqual({ kind: 'cost', cost: { low: 6.4, high: 6.8 } })
  expect(materialCost(use, { platePerKg: 1.5, consumablePerKg: null, gasPerM3: 6 })).toEqual({ kind: 'partial', known: { low: 6, high: 6 }, missing: ['consumable'] })
  expect(materialCost({ ...use, plateKg: null }, { platePerKg: 1.5, consumablePerKg: 4, gasPerM3: 6 })).toMatchObject({ kind: 'partial', missing: ['plate'] })
  expect(materialCost({ ...use, gasLitres: 0 }, { platePerKg: 1.5, consumablePerKg: 4, gasPerM3: null })).toMatchObject({ kind: 'cost' })
})

it('refuses prices and flows below zero', () => {
  expect(() => materialCost({ plateKg: 1, consumableKg: null, gasLitres: 0 }, { platePerKg: -1, consumablePerKg: 1, gasPerM3: 1 })).toThrow(RangeError)
  expect(() => couponMaterial({ ...coupon, gasFlowLPerMin: -1 })).toThrow(RangeError)
  expect(() => couponMaterial({ ...coupon, passes: [{ ...timed, arcSeconds: 0 }] })).toThrow(RangeError)
})

import fc from 'fast-check'
import { expect, it } from 'vitest'
import { PROCESSES } from '@/lib/procedure/process'
import { shadeFor } from '@/lib/safety/shade'

it.each([
  ['SMAW', 59.9, 7, null], ['SMAW', 60, 8, 10], ['SMAW', 159.9, 8, 10], ['SMAW', 160, 10, 12], ['SMAW', 249.9, 10, 12], ['SMAW', 250, 11, 14], ['SMAW', 550, 11, 14],
  ['GMAW', 59.9, 7, null], ['GMAW', 60, 10, 11], ['GMAW', 159.9, 10, 11], ['GMAW', 160, 10, 12], ['GMAW', 249.9, 10, 12], ['GMAW', 250, 10, 14], ['GMAW', 500, 10, 14],
  ['FCAW-S', 59.9, 7, null], ['FCAW-S', 200, 10, 12], ['FCAW-G', 249.9, 10, 12], ['FCAW-G', 250, 10, 14],
] as const)('%s at %d A: shade %d at least, %s suggested; the darker row where two meet', (process, amps, minimum, suggested) => {
  const advice = shadeFor(process, amps)
  expect(advice.minimum).toEqual({ lightest: minimum, darkest: minimum })
  expect(advice.suggested).toEqual(suggested === null ? null : { lightest: suggested, darkest: suggested })
  expect(advice.beyondTable).toBe(false)
})

it('runs over the whole table while the current is unknown', () => {
  expect(shadeFor('SMAW', null)).toMatchObject({ minimum: { lightest: 7, darkest: 11 }, suggested: { lightest: 10, darkest: 14 } })
  expect(shadeFor('FCAW-S', null)).toMatchObject({ minimum: { lightest: 7, darkest: 10 }, suggested: { lightest: 11, darkest: 14 } })
})

it.each([
  [25.4 * 2.9 / 32, 7], [25.4 * 3 / 32, 8], [25.4 * 5 / 32, 8], [25.4 * 5.1 / 32, 10], [25.4 * 8 / 32, 10], [25.4 * 8.1 / 32, 11],
])('a covered electrode of %d mm takes shade %d at least', (diameter, minimum) => {
  expect(shadeFor('SMAW', null, diameter).minimum.darkest).toBe(minimum)
})

it('takes the darker of what current and electrode ask for, and ignores the diameter of a wire', () => {
  expect(shadeFor('SMAW', 50, 3.2).minimum.darkest).toBe(8)
  expect(shadeFor('SMAW', 170, 3.2).minimum.darkest).toBe(10)
  expect(shadeFor('FCAW-S', 50, 3.2).minimum.darkest).toBe(7)
})

it('says when the current is above the table', () => {
  expect(shadeFor('SMAW', 551)).toMatchObject({ beyondTable: true, minimum: { darkest: 11 } })
  expect(shadeFor('GMAW', 501)).toMatchObject({ beyondTable: true, minimum: { darkest: 10 } })
  expect(shadeFor('SMAW', 501).beyondTable).toBe(false)
})

it('never gets lighter as the current rises', () => {
  fc.assert(fc.property(fc.constantFrom(...PROCESSES), fc.double({ min: 1, max: 600, noNaN: true }), fc.double({ min: 0, max: 200, noNaN: true }), (process, amps, more) => {
    const [low, high] = [shadeFor(process, amps), shadeFor(process, amps + more)]
    expect(high.minimum.darkest).toBeGreaterThanOrEqual(low.minimum.darkest)
    expect(high.suggested?.darkest ?? 0).toBeGreaterThanOrEqual(low.suggested?.darkest ?? 0)
    if (low.suggested) expect(low.suggested.darkest).toBeGreaterThanOrEqual(low.minimum.darkest)
  }))
})

it.each([0, -1, Number.NaN, Infinity])('refuses %d as a current or a diameter', (bad) => {
  expect(() => shadeFor('SMAW', bad)).toThrow(RangeError)
  expect(() => shadeFor('SMAW', 100, bad)).toThrow(RangeError)
})

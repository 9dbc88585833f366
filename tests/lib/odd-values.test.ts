import { describe, expect, it } from 'vitest'
import { readClassification } from '@/lib/consumables/classification'
import { criteriaById } from '@/lib/criteria/catalogue'
import { maximumFilletLegAlongEdge, minimumFilletLeg } from '@/lib/geometry/fillet'
import { heatInput } from '@/lib/procedure/heat-input'
import { judgeGuidedBend, judgeIsoBend } from '@/lib/qualification/bend'
import { continuityDue } from '@/lib/qualification/continuity'
import { judgeFilletBreak } from '@/lib/qualification/fillet-break'
import { positionsQualified } from '@/lib/qualification/positions'
import { assessReadiness } from '@/lib/readiness/assess'
import { readinessFilter } from '@/lib/readiness/filter'
import { scoreInspection } from '@/lib/scoring/score-inspection'
import { brierScore } from '@/lib/statistics/calibration'
import { wilsonInterval } from '@/lib/statistics/proportion'
import { formatLength, mm, parseLength } from '@/lib/units/length'

// Values that the types rule out but that untyped callers, stored data and forms can still bring.
const odd = (value: unknown): never => value as never

const weld = { type: 'fillet', process: 'FCAW-S', position: '3F', progression: 'up', thicknessMm: 10, electrodeDiameterMm: 1.6, nominalLegMm: 8, lengthMm: 200 } as const
const inspection = { stations: [], indications: [], lookedFor: [], cratersFilled: null, fusionComplete: null }
const criteria = criteriaById('structural-cyclic.us')
const coupon = { day: 1, accepted: true }
const rule = { threshold: 0.65, minimumCoupons: 1, staleAfterDays: 30, testResults: [] }
const today = new Date('2026-03-01')

describe('a value of the wrong kind is refused in a sentence, neither guessed at nor turned into NaN', () => {
  it.each<[string, () => unknown, RegExp]>([
    ['a length that is no text', () => parseLength(odd(5), 'in'), /"5" is not a length: it is not text/],
    ['a unit of length nobody reads', () => parseLength('5', odd('cm')), /"cm" is not a unit that a length is read in/],
    ['inches in no steps', () => formatLength(mm(5), { unit: 'in', denominator: odd(0) }), /steps of 16, 32, 64 to the inch, not 0/],
    ['inches in tenths', () => formatLength(mm(5), { unit: 'in', denominator: odd(10) }), /not 10/],
    ['inches in steps not given', () => formatLength(mm(5), { unit: 'in' } as never), /not undefined/],
    ['a length shown in feet', () => formatLength(mm(5), { unit: 'ft', denominator: 16 } as never), /'in' or 'mm', not "ft"/],
    ['a classification that is no text', () => readClassification(odd(null)), /text such as E71T-8, not null/],
    ['heat input of an unknown process', () => heatInput({ volts: 20, amps: 200, travelSpeedMmPerS: 4, process: odd('GTAW') }), /"GTAW" is not a process taught here: use SMAW/],
    ['heat input of a word every object knows', () => heatInput({ volts: 20, amps: 200, travelSpeedMmPerS: 4, process: odd('toString') }), /"toString" is not a process/],
    ['a least leg in no system', () => minimumFilletLeg(10, odd('metric')), /'us' or 'si', not "metric"/],
    ['a largest leg in no system', () => maximumFilletLegAlongEdge(10, odd('metric')), /'us' or 'si', not "metric"/],
    ['a plate test that is no text', () => positionsQualified(odd(3)), /written like 3G or 3G\+4G, not 3/],
    ['a bend without its list', () => judgeGuidedBend(odd(null), 'us'), /list of what was seen/],
    ['an ISO bend without its list', () => judgeIsoBend(odd(undefined)), /list of what was seen/],
    ['a fillet break without its list', () => judgeFilletBreak({ foldedFlat: false, rootFused: true } as never, 'us'), /list of its inclusions/],
    ['a date written as text', () => continuityDue([{ process: 'SMAW', on: odd('2026-01-01') }], 'SMAW', today), /not a date/],
    ['a broken date of another process', () => continuityDue([{ process: 'GMAW', on: new Date('x') }], 'SMAW', today), /not a date/],
    ['a forecast written as text', () => brierScore([odd('0.5')], [true]), /0 to 1, not 0\.5/],
    ['a confidence written as text', () => wilsonInterval(1, 2, odd('0.95')), /between 0 and 1/],
    ['coupons that are no list', () => readinessFilter(odd(null), 5), /needs a list of coupons/],
    ['a coupon that is empty', () => readinessFilter([odd(null)], 5), /Coupon 1 is empty/],
    ['an interval level written as text', () => readinessFilter([coupon], 5, { level: odd('0.8') }), /level must lie between 0 and 1/],
    ['parameters with some left out', () => readinessFilter([coupon], 5, { parameters: { m0: -1 } as never }), /parameter s0 must be a finite number, not undefined/],
    ['a threshold written as text', () => assessReadiness([coupon], 5, { ...rule, threshold: odd('0.65') }), /threshold must lie/],
    ['stale days written as text', () => assessReadiness([coupon], 5, { ...rule, staleAfterDays: odd('30') }), /stale must be above 0/],
    ['test results that are no list', () => assessReadiness([coupon], 5, { ...rule, testResults: odd(null) }), /list of test results/],
    ['a test result nobody decided', () => assessReadiness([coupon], 5, { ...rule, testResults: [{ passed: odd('yes') }] }), /true or false/],
    ['a test forecast written as text', () => assessReadiness([coupon], 5, { ...rule, testResults: [{ passed: true, forecast: odd('0.5') }] }), /forecast must lie/],
    ['no weld', () => scoreInspection(odd(null), inspection, criteria), /no weld to judge/],
    ['no inspection', () => scoreInspection(weld, odd(null), criteria), /lists of stations/],
    ['a station that is empty', () => scoreInspection(weld, { ...inspection, stations: [odd(null)] }, criteria), /Station 1 is empty/],
    ['an indication that is empty', () => scoreInspection(weld, { ...inspection, indications: [odd(null)] }, criteria), /Indication 1 is empty/],
    ['tension answered in a word, which would pick the milder undercut limit', () => scoreInspection({ ...weld, transverseToTension: odd('yes') }, inspection, criteria), /runs across the tension is answered true or false, not "yes"/],
  ])('%s', (_, call, sentence) => {
    expect(call).toThrow(RangeError)
    expect(call).toThrow(sentence)
  })
})

it('hands out a date of its own for the last use', () => {
  const use = { process: 'SMAW', on: new Date('2026-02-01') }
  continuityDue([use], 'SMAW', today)?.lastUse.setUTCFullYear(1999)
  expect(use.on.toISOString()).toBe('2026-02-01T00:00:00.000Z')
})

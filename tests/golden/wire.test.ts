// Outside: inches of steel wire in a pound as the ESAB MIG handbook prints them (page 10); the same reckoned at 0.283 lb/in3;
// a worked deposition rate; deposition efficiencies of ESAB, Calculating Filler Metal Consumption; trade facts marked as such.
import { expect, it } from 'vitest'
import { readClassification } from '@/lib/consumables/classification'
import { stickOutAdvice } from '@/lib/consumables/advice'
import { depositionEfficiency, depositionKgPerHour, meltOffKgPerHour, wireInchesPerPound } from '@/lib/procedure/wire'
import { formatLength, mm, parseLength } from '@/lib/units/length'
import { kg, toPounds } from '@/lib/units/mass'
import { parseWireFeedSpeed } from '@/lib/units/wire-feed-speed'

const inch = (text: string): number => parseLength(text, 'in')

it.each([['0.030', 4956], ['0.035', 3648], ['0.045', 2196], ['1/16', 1152], ['3/32', 516]])('%s in steel wire: %d in in a pound, to 1.2 % (ESAB MIG handbook)', (diameter, printed) => {
  expect(Math.abs(wireInchesPerPound(inch(diameter)) / printed - 1)).toBeLessThan(0.012)
})

it.each([['0.030', 4999], ['0.035', 3673], ['0.045', 2222], ['0.052', 1664], ['1/16', 1152], ['0.068', 973], ['0.072', 868], ['5/64', 737], ['3/32', 512]])('%s in: %d in in a pound at 0.283 lb/in3 (4 / (pi × d² × 0.283), by hand)', (diameter, reckoned) => {
  expect(Math.abs(wireInchesPerPound(inch(diameter)) - reckoned)).toBeLessThan(1)
})

it('lb/h = feed × 60 / (inches in a pound) (ESAB MIG handbook): 100 in/min of 1/16 in wire melts 5.21 lb/h', () => {
  const melted = meltOffKgPerHour({ feedMmPerS: parseWireFeedSpeed('100 in/min', 'in/min'), diameterMm: inch('1/16') })
  expect(toPounds(kg(melted))).toBeCloseTo((100 * 60) / wireInchesPerPound(inch('1/16')), 9)
  expect(toPounds(kg(melted))).toBeCloseTo(5.21, 2)
})

it('0.052 in wire at 320 in/min and 98 % deposits 11.1 lb/h, to 2.5 % (worked example; its 13.1 × d² short form takes 0.278 lb/in3)', () => {
  const deposited = toPounds(kg(depositionKgPerHour({ feedMmPerS: parseWireFeedSpeed('320', 'in/min'), diameterMm: inch('.052'), efficiency: 0.98 })))
  expect(Math.abs(deposited / 11.1 - 1)).toBeLessThan(0.025)
  expect(deposited * (0.278 / 0.283)).toBeCloseTo(11.11, 1)
})

it.each([['FCAW-S', 0.78], ['FCAW-G', 0.86], ['GMAW', 0.96], ['SMAW', 0.62]] as const)('%s deposits %d of its consumable (ESAB; which process each figure belongs to from memory)', (process, efficiency) => {
  expect(depositionEfficiency(process).efficiency).toBe(efficiency)
})

it('a bead five to six wire diameters wide is 5/16 to 3/8 in for 1/16 in wire (common practice, no source)', () => {
  const [five, six] = [5, 6].map((times) => formatLength(mm(times * inch('1/16')), { unit: 'in', denominator: 16 }))
  expect([five, six]).toEqual(['5/16 in', '3/8 in'])
})

it('a 1/16 in self-shielded wire sticks out three-quarters to one inch (common practice, no source)', () => {
  for (const wire of ['E71T-8', 'E71T-11']) {
    const advice = stickOutAdvice(readClassification(wire), inch('1/16'))
    expect(advice?.range.min).toBeCloseTo(inch('3/4'), 9)
    expect(advice?.range.max).toBeCloseTo(inch('1'), 9)
    expect(advice?.source.status).toBe('common-practice')
  }
})

it.each([
  ['E71T-1C', '3/4', '1 1/2'], ['E70T-4', '3/4', '3 3/4'],
])('%s: extension %s to %s in (Goodheart-Willcox, Welding Fundamentals, 2017, Fig. 17-4)', (wire, min, max) => {
  const advice = stickOutAdvice(readClassification(wire), inch('3/32'))
  expect(advice?.range.min).toBeCloseTo(inch(min), 9)
  expect(advice?.range.max).toBeCloseTo(inch(max), 9)
})

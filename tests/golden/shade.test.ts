// Outside: 29 CFR 1910.133(a)(5), table of filter lenses (minimum protective shade), as published; ANSI Z49.1:2005 lens shade guide
// (suggested) as a gas distributor reproduces it; 29 CFR 1910.252 (a) and (c); NFPA 51B:2019 as reported by a fire-code consultant.
import { expect, it } from 'vitest'
import { cautionsFor } from '@/lib/safety/cautions'
import { EXPOSURE_LIMITS, fumeRank } from '@/lib/safety/fume'
import { FIRE_CLEARANCE, FIRE_WATCH_RULES, strictestFireWatch } from '@/lib/safety/fire-watch'
import { shadeFor } from '@/lib/safety/shade'
import { VENTILATION } from '@/lib/safety/ventilation'

it.each([
  // operation, current inside the row, minimum (OSHA), suggested (Z49.1)
  ['SMAW', 40, 7, null], ['SMAW', 110, 8, 10], ['SMAW', 200, 10, 12], ['SMAW', 400, 11, 14],
  ['GMAW', 40, 7, null], ['GMAW', 110, 10, 11], ['GMAW', 200, 10, 12], ['GMAW', 400, 10, 14],
  ['FCAW-S', 40, 7, null], ['FCAW-S', 110, 10, 11], ['FCAW-S', 200, 10, 12], ['FCAW-S', 400, 10, 14],
  ['FCAW-G', 40, 7, null], ['FCAW-G', 110, 10, 11], ['FCAW-G', 200, 10, 12], ['FCAW-G', 400, 10, 14],
] as const)('%s at %d A: OSHA minimum %d, Z49.1 suggests %s', (process, amps, minimum, suggested) => {
  expect(shadeFor(process, amps).minimum.darkest).toBe(minimum)
  expect(shadeFor(process, amps).suggested?.darkest ?? null).toBe(suggested)
})

it('ventilates by 29 CFR 1910.252(c)(2) and (3): 10,000 ft3 (284 m3), 16 ft (5 m), 2,000 ft3 (57 m3) a minute, 100 ft (30 m) a minute', () => {
  expect(VENTILATION).toEqual({ spacePerWelder: { ft3: 10_000, m3: 284 }, ceiling: { ft: 16, m: 5 }, airPerWelder: { ft3PerMin: 2000, m3PerMin: 57 }, hoodCapture: { ftPerMin: 100, mPerMin: 30 } })
})

it('clears 35 ft (29 CFR 1910.252(a)(2)(iii)(A)) and watches half an hour (OSHA) or one hour (NFPA 51B:2019), the stricter winning', () => {
  expect(FIRE_CLEARANCE).toEqual({ ft: 35, m: 11 })
  expect(FIRE_WATCH_RULES.map((rule) => rule.minutes)).toEqual([30, 60])
  expect(strictestFireWatch()).toMatchObject({ minutes: 60, source: { title: 'NFPA 51B:2019' } })
})

it.each([
  ['manganese', 'OSHA', 'ceiling', 'total', 5], // 29 CFR 1910.1000 Table Z-1
  ['manganese', 'NIOSH', 'shift', 'total', 1], // NIOSH recommended exposure limit
  ['manganese', 'NIOSH', 'short', 'total', 3],
  ['manganese', 'ACGIH', 'shift', 'respirable', 0.02], // threshold limit value of 2013
  ['manganese', 'ACGIH', 'shift', 'inhalable', 0.1],
  ['manganese', 'Cal/OSHA', 'shift', 'total', 0.2], // California Title 8, section 5155
  ['chromium-6', 'OSHA', 'shift', 'total', 0.005], // 29 CFR 1910.1026: 5 micrograms
] as const)('%s by %s (%s, %s): %d mg/m3', (agent, body, over, fraction, value) => {
  expect(EXPOSURE_LIMITS.filter((each) => each.agent === agent && each.body === body && each.over === over && each.fraction === fraction).map((each) => each.mgPerM3)).toEqual([value])
})

it('flux-cored makes the most fume, then covered electrodes, then solid wire (OSHA FactSheet on hazardous fume and gases)', () => {
  expect((['FCAW-S', 'FCAW-G', 'SMAW', 'GMAW'] as const).map(fumeRank)).toEqual([1, 1, 2, 3])
})

it('an open circuit holds at most 80 V of AC or 100 V of DC in manual welding (29 CFR 1910.254(b)(3), same words in WAC 296-24-68503)', () => {
  const volts = (code: string): number | undefined => cautionsFor('SMAW', 100).find((each) => each.code === code)?.figures.volts
  expect([volts('open-circuit-ac'), volts('open-circuit-dc')]).toEqual([80, 100])
})

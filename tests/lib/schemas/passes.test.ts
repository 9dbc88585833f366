import { describe, expect, it } from 'vitest'
import { blankPass, passesSchema, type PassForm } from '@/lib/schemas/passes'

const WELD_MM = 203.2
const read = (pass: Partial<PassForm>, reader: Parameters<typeof passesSchema>[0] = { locale: 'en', units: 'in' }) => passesSchema(reader, WELD_MM).safeParse([{ ...blankPass(), ...pass }])
const value = (pass: Partial<PassForm>, units: 'in' | 'mm' = 'in') => {
  const parsed = read(pass, { locale: 'en', units })
  if (!parsed.success) throw new Error(parsed.error.message)
  return parsed.data[0]!
}
const complaint = (pass: Partial<PassForm>, units: 'in' | 'mm' = 'in', locale: 'en' | 'es' = 'en') => {
  const parsed = read(pass, { locale, units })
  return parsed.success ? {} : Object.fromEntries(parsed.error.issues.map((issue) => [issue.path.join('.'), issue.message]))
}

describe('a pass', () => {
  it('with nothing written down holds nothing', () => {
    expect(value({})).toEqual({ amps: null, volts: null, wireFeedMmPerS: null, contactTipToWorkMm: null, polarity: null, gas: null, arcSeconds: null, lengthMm: null })
  })

  it('keeps a 0 that was written down', () => {
    expect(value({ amps: '0', volts: '0 V', wireFeed: '0', stickOut: '0', arcTime: '0:00', length: '0' })).toMatchObject({ amps: 0, volts: 0, wireFeedMmPerS: 0, contactTipToWorkMm: 0, arcSeconds: 0, lengthMm: 0 })
  })

  it('is read in the units of whoever typed it', () => {
    const inches = value({ amps: '140', volts: '16,5', wireFeed: '90', stickOut: '3/4', arcTime: '1:30', length: '8', gas: ' M21 ', polarity: 'DCEN' })
    expect(inches).toEqual({ amps: 140, volts: 16.5, wireFeedMmPerS: expect.closeTo(38.1, 9), contactTipToWorkMm: expect.closeTo(19.05, 9), arcSeconds: 90, lengthMm: expect.closeTo(203.2, 9), gas: 'M21', polarity: 'DCEN' })
    const metric = value({ wireFeed: '2,3', stickOut: '19', length: '200' }, 'mm')
    expect(metric).toMatchObject({ wireFeedMmPerS: expect.closeTo(38.3333, 3), contactTipToWorkMm: 19, lengthMm: 200 })
  })

  it('is read in the unit that is named, whoever typed it', () => {
    expect(value({ wireFeed: '2.3 m/min', stickOut: '19 mm' }, 'in')).toMatchObject({ wireFeedMmPerS: expect.closeTo(38.3333, 3), contactTipToWorkMm: 19 })
    expect(value({ wireFeed: '90 in/min', stickOut: '3/4 in' }, 'mm')).toMatchObject({ wireFeedMmPerS: expect.closeTo(38.1, 9), contactTipToWorkMm: expect.closeTo(19.05, 9) })
  })

  it.each([
    [{ amps: '2000' }, { amps: '2000.1' }, '0.amps', '2000.1 is more than a welding set gives. The most taken here is 2000 A.'],
    [{ volts: '100' }, { volts: '165' }, '0.volts', '165 is more than a welding set gives. The most taken here is 100 V.'],
    [{ wireFeed: '2362' }, { wireFeed: '2363' }, '0.wireFeed', '2363 is more than a welding set gives. The most taken here is 2362 in/min.'],
    [{ stickOut: '150 mm' }, { stickOut: '150.1 mm' }, '0.stickOut', '150.1 mm is more than a welding set gives. The most taken here is 5 29/32 in.'],
    [{ arcTime: '4:00:00' }, { arcTime: '4:00:01' }, '0.arcTime', '4:00:01 is more than a welding set gives. The most taken here is 4:00:00.'],
    [{ length: '8' }, { length: '8 1/16' }, '0.length', 'The weld is 8 in long; 8 1/16 is past its end.'],
  ])('takes %o, and of %o says which limit it is past', (most, more, field, sentence) => {
    expect(complaint(most)).toEqual({})
    expect(complaint(more)).toEqual({ [field]: sentence })
  })

  it('names the limit in the unit of whoever reads it', () => {
    expect(complaint({ wireFeed: '70' }, 'mm', 'es')).toEqual({ '0.wireFeed': '70 es más de lo que da una máquina de soldar. Lo máximo aquí es 60 m/min.' })
    expect(complaint({ length: '210' }, 'mm')).toEqual({ '0.length': 'The weld is 203.2 mm long; 210 is past its end.' })
  })

  it.each([['amps', '12 V', '140'], ['volts', 'high', '18.5'], ['wireFeed', '-90', '90 in/min'], ['arcTime', '1:60', '1:30']] as const)('says how %s is written when %o cannot be read', (box, typed, example) => {
    expect(complaint({ [box]: typed })).toEqual({ [`0.${box}`]: `“${typed}” is not a number with the right unit. Write it like ${example}.` })
  })

  it.each([['gas', 'x'.repeat(21), 'Keep it under 20 characters.'], ['amps', '1'.repeat(41), 'Keep it under 40 characters.']] as const)('says how much text %s takes', (box, typed, sentence) => {
    expect(complaint({ [box]: typed })).toEqual({ [`0.${box}`]: sentence })
  })

  it('has a polarity there is', () => {
    expect(Object.keys(complaint({ polarity: 'DC' as never }))).toEqual(['0.polarity'])
  })
})

describe('the passes of a coupon', () => {
  it('are at least one and at most forty', () => {
    const count = (passes: number): boolean => passesSchema({ locale: 'en', units: 'in' }, WELD_MM).safeParse(Array.from({ length: passes }, blankPass)).success
    expect([count(0), count(1), count(40), count(41)]).toEqual([false, true, true, false])
  })
})

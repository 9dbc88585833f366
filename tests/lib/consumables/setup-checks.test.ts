import { describe, expect, it } from 'vitest'
import { stickOutAdvice, plateAdvice } from '@/lib/consumables/advice'
import { readClassification } from '@/lib/consumables/classification'
import { checkBoothCard, checkPass, SETUP_CHECKS, type SetupCheck, type SetupFacts } from '@/lib/consumables/setup-checks'
import type { BoothCard, PassSettings } from '@/lib/procedure/booth-card'
import { explainSetup } from '@/lib/reports/explain-setup'

const inch = (size: number): number => size * 25.4
const facts: SetupFacts = { process: 'FCAW-S', position: '2F', progression: null, plateThicknessMm: 6, passCount: 1, electrodeDiameterMm: inch(0.045) }
const card: BoothCard = {
  polarity: 'DCEN', amps: { min: 120, max: 160 }, volts: { min: 15, max: 18 }, wireFeedMmPerS: { min: 30, max: 50 }, contactTipToWorkMm: { min: inch(1 / 2), max: inch(5 / 8) },
  travelSpeedMmPerS: { min: 3, max: 5 }, gas: null, gasFlowLPerMin: null, workAngleDeg: null, travelAngleDeg: null, travelDirection: 'drag', sidePauseSeconds: null, note: null,
}
const gasCard: BoothCard = { ...card, polarity: 'DCEP', gas: 'M21', contactTipToWorkMm: { min: inch(3 / 4), max: inch(1) } }
const pass: PassSettings = { amps: null, volts: null, wireFeedMmPerS: null, contactTipToWorkMm: null, polarity: null, gas: null, arcSeconds: null, lengthMm: null }
const card11 = (change: Partial<BoothCard> = {}, factChange: Partial<SetupFacts> = {}, wire = 'E71T-11'): string[] =>
  checkBoothCard(readClassification(wire), { ...facts, ...factChange }, { ...card, ...change }).map((each) => `${each.severity} ${each.check}`)

describe('a booth card', () => {
  it('has nothing to say of a right set-up', () => {
    expect(card11()).toEqual([])
    expect(checkBoothCard(readClassification('E71T-1M'), { ...facts, process: 'FCAW-G', position: '3F', progression: 'up', electrodeDiameterMm: inch(1 / 16) }, gasCard)).toEqual([])
    expect(checkBoothCard(readClassification('E7018'), { ...facts, process: 'SMAW', position: '4F' }, { ...gasCard, gas: null, contactTipToWorkMm: null })).toEqual([])
  })

  it('finds the wrong polarity, both ways', () => {
    expect(card11({ polarity: 'DCEP' })).toEqual(['wrong polarity'])
    expect(card11({ polarity: 'DCEN' }, {}, 'E70T-4')).toEqual(['wrong polarity', 'caution stick-out'])
    expect(card11({ polarity: 'AC' })).toEqual(['wrong polarity'])
  })

  it('says nothing of polarity or gas that the class leaves to the maker', () => {
    expect(card11({ polarity: 'DCEP' }, {}, 'E71T-GS')).toEqual([])
    expect(card11({ polarity: 'DCEN', gas: 'C1' }, {}, 'E71T-GS')).toEqual([])
  })

  it('finds gas where none belongs and none where it does', () => {
    expect(card11({ gas: 'C1' })).toEqual(['wrong gas-on-self-shielded'])
    expect(card11({ gas: '  ' })).toEqual([])
    expect(checkBoothCard(readClassification('E71T-1M'), { ...facts, process: 'FCAW-G' }, { ...gasCard, gas: null })).toMatchObject([{ check: 'gas-missing', severity: 'wrong' }])
    expect(checkBoothCard(readClassification('ER70S-6'), { ...facts, process: 'GMAW' }, { ...gasCard, gas: null })).toMatchObject([{ check: 'gas-missing' }])
    expect(checkBoothCard(readClassification('E6010'), { ...facts, process: 'SMAW' }, { ...gasCard, contactTipToWorkMm: null })).toMatchObject([{ check: 'gas-on-stick' }])
  })

  it.each([['C1', 0], ['CO2', 0], ['100% CO2', 0], ['M21', 1], ['75/25', 1], ['Ar 80 / CO2 20', 1]])('%s beside E71T-1C gives %d cautions', (gas, cautions) => {
    expect(checkBoothCard(readClassification('E71T-1C'), { ...facts, process: 'FCAW-G' }, { ...gasCard, gas })).toHaveLength(cautions)
  })

  it.each(['M21', '75/25', '80/20', 'Ar 80 / CO2 20', '75% Ar / 25% CO2'])('%s is the gas of E71T-1M', (gas) => {
    expect(checkBoothCard(readClassification('E71T-1M'), { ...facts, process: 'FCAW-G' }, { ...gasCard, gas })).toEqual([])
  })

  it('accepts either gas of a wire classified with both, and any for solid wire', () => {
    for (const gas of ['C1', 'M21']) expect(checkBoothCard(readClassification('E71T-1C/M'), { ...facts, process: 'FCAW-G' }, { ...gasCard, gas })).toEqual([])
    expect(checkBoothCard(readClassification('ER70S-6'), { ...facts, process: 'GMAW' }, { ...gasCard, gas: 'M13' })).toEqual([])
  })

  it('finds a position or a progression the class does not cover', () => {
    expect(card11({}, { position: '3F', progression: 'down' })).toEqual([])
    expect(card11({}, { position: '3F', progression: 'up' })).toEqual(['wrong progression'])
    expect(card11({}, { position: '3F', progression: null })).toEqual([])
    expect(card11({}, { position: '4G' })).toEqual([])
    expect(card11({}, { position: '4G' }, 'E70T-11')).toEqual(['wrong position'])
    expect(card11({}, { position: '3G', progression: 'up' }, 'E70T-11')).toEqual(['wrong position'])
    expect(card11({}, { position: '6G', progression: 'down' })).toEqual([])
    expect(() => card11({}, { position: '9Z' })).toThrow(RangeError)
  })

  it('finds a single-pass wire on more than one pass', () => {
    expect(card11({}, { passCount: 2 })).toEqual([])
    expect(card11({}, { passCount: 1 }, 'E71T-GS')).toEqual([])
    expect(card11({}, { passCount: 2 }, 'E71T-GS')).toEqual(['wrong single-pass-wire'])
  })

  it('finds a wire of another process', () => {
    expect(card11({}, { process: 'GMAW' })).toEqual(['wrong process'])
  })

  it.each([
    [inch(0.045), inch(5 / 16), 0], [inch(0.045), inch(5 / 16) + 0.01, 1],
    [inch(0.068), inch(1 / 2), 0], [inch(0.068), inch(1 / 2) + 0.01, 1],
    [null, inch(3 / 4), 0], [null, inch(3 / 4) + 0.01, 1],
  ])('T-11 wire of %s mm on plate of %d mm gives %d cautions', (electrodeDiameterMm, plateThicknessMm, cautions) => {
    expect(card11({ contactTipToWorkMm: null }, { electrodeDiameterMm, plateThicknessMm })).toHaveLength(cautions)
  })

  it('names the strictest advice that a plate is over', () => {
    const [found] = checkBoothCard(readClassification('E71T-11'), { ...facts, plateThicknessMm: 25 }, card)
    expect(found?.values.maxMm).toBeCloseTo(7.9375, 9)
    expect(plateAdvice(readClassification('E71T-11'), null)).toHaveLength(1)
    expect(plateAdvice(readClassification('E71T-11'), null)[0]?.range.max).toBeCloseTo(19.05, 9)
    expect(plateAdvice(readClassification('E71T-8'), 1.6)).toEqual([])
    expect(plateAdvice(readClassification('E7018'), 3.2)).toEqual([])
  })

  it('finds a stick-out shorter or longer than advised, at the ends and beyond', () => {
    const stickOut = (min: number | null, max: number | null): string[] => card11({ contactTipToWorkMm: { min, max } })
    expect(stickOut(inch(3 / 8), inch(3 / 4))).toEqual([])
    expect(stickOut(inch(3 / 8) - 0.01, null)).toEqual(['caution stick-out'])
    expect(stickOut(null, inch(3 / 4) + 0.01)).toEqual(['caution stick-out'])
    expect(stickOut(null, null)).toEqual([])
    expect(card11({ contactTipToWorkMm: null })).toEqual([])
  })

  it('puts what is wrong before what is a caution', () => {
    expect(card11({ polarity: 'DCEP', contactTipToWorkMm: { min: 1, max: 2 } }, { plateThicknessMm: 20, passCount: 3 }, 'E71T-14')).toEqual(['wrong single-pass-wire', 'wrong polarity', 'caution plate-too-thick', 'caution stick-out'])
  })

  it.each([
    ['ER70S-6', 0.9, inch(1 / 4), inch(1)],
    ['E71T-1C', 1.2, inch(3 / 4), inch(3 / 2)],
    ['E71T-11', null, inch(3 / 8), inch(1)],
    ['E71T-11', inch(0.045), inch(3 / 8), inch(3 / 4)],
    ['E71T-11', inch(0.046), inch(3 / 4), inch(1)],
    ['E71T-GS', inch(0.035), inch(3 / 8), inch(3 / 4)],
    ['E70T-6', inch(3 / 32), inch(3 / 4), inch(15 / 4)],
  ] as const)('advises %s of %s mm a stick-out of %d to %d mm', (wire, diameter, min, max) => {
    const advice = stickOutAdvice(readClassification(wire), diameter)
    expect(advice?.range.min).toBeCloseTo(min, 9)
    expect(advice?.range.max).toBeCloseTo(max, 9)
  })

  it('splits T-11 wires at 0.045 in, and names sheet-metal wires', () => {
    const strictest = (wire: string, diameter: number): number | null | undefined => plateAdvice(readClassification(wire), diameter)[0]?.range.max
    expect(strictest('E71T-11', inch(0.045))).toBeCloseTo(inch(5 / 16), 9)
    expect(strictest('E71T-11', inch(0.046))).toBeCloseTo(inch(1 / 2), 9)
    for (const wire of ['E70T-3', 'E71T-14']) expect(strictest(wire, 1.6)).toBeCloseTo(inch(3 / 16), 9)
  })

  it('advises no stick-out for a covered electrode', () => {
    expect(stickOutAdvice(readClassification('E7018'), 3.2)).toBeNull()
  })
})

describe('a pass', () => {
  const ran = (change: Partial<PassSettings>, on = card, wire = 'E71T-11'): string[] => checkPass(readClassification(wire), on, { ...pass, ...change }).map((each) => each.check)

  it('is not faulted for what was not written down', () => {
    expect(ran({})).toEqual([])
  })

  it.each([
    ['amps', 'amps-off-card', 119, 120, 160, 161],
    ['volts', 'volts-off-card', 14.9, 15, 18, 18.1],
    ['wireFeedMmPerS', 'wire-feed-off-card', 29, 30, 50, 51],
    ['contactTipToWorkMm', 'contact-tip-off-card', 12.6, 12.7, 15.875, 15.9],
  ] as const)('%s is held to the card, ends included', (field, check, under, low, high, over) => {
    expect(ran({ [field]: under })).toEqual([check])
    expect(ran({ [field]: low })).toEqual([])
    expect(ran({ [field]: high })).toEqual([])
    expect(ran({ [field]: over })).toEqual([check])
    expect(ran({ [field]: over }, { ...card, amps: null, volts: null, wireFeedMmPerS: null, contactTipToWorkMm: null })).toEqual([])
  })

  it('reckons travel speed from length and time when both are there', () => {
    expect(ran({ lengthMm: 150, arcSeconds: 30 })).toEqual([])
    expect(ran({ lengthMm: 150, arcSeconds: 29 })).toEqual(['travel-speed-off-card'])
    expect(ran({ lengthMm: 150 })).toEqual([])
    expect(() => ran({ lengthMm: 150, arcSeconds: 0 })).toThrow(RangeError)
  })

  it('is against the class first, against the card only where the class allows', () => {
    expect(ran({ polarity: 'DCEP' })).toEqual(['polarity'])
    expect(ran({ polarity: 'AC' }, { ...gasCard, gas: null }, 'E7018')).toEqual(['polarity-off-card'])
    expect(ran({ gas: 'C1' })).toEqual(['gas-on-self-shielded'])
    expect(ran({ gas: 'CO2' }, gasCard, 'ER70S-6')).toEqual(['gas-off-card'])
    expect(ran({ gas: '75/25' }, gasCard, 'ER70S-6')).toEqual([])
  })
})

describe('words', () => {
  const source = { title: 'x', clause: null, status: 'memory' } as const
  const examples: Record<(typeof SETUP_CHECKS)[number], SetupCheck['values']> = {
    process: { classification: 'E71T-11', wire: 'FCAW-S', exercise: 'GMAW' },
    polarity: { classification: 'E7018', set: 'DCEN', right: 'DCEP/AC' },
    'gas-on-self-shielded': { classification: 'E71T-11', gas: 'C1' },
    'gas-on-stick': { classification: 'E7018', gas: 'C1' },
    'gas-missing': { classification: 'ER70S-6' },
    'gas-of-another-class': { classification: 'E71T-1C', gas: 'M21', right: 'C1' },
    position: { classification: 'E70T-4', position: '4F' },
    progression: { classification: 'E71T-11', position: '3F', progression: 'up' },
    'single-pass-wire': { classification: 'E71T-GS', passes: 3 },
    'plate-too-thick': { classification: 'E71T-11', thicknessMm: 12.7, maxMm: inch(5 / 16) },
    'stick-out': { setMm: inch(1 / 2), min: inch(3 / 4), max: inch(1) },
    'polarity-off-card': { ran: 'AC', card: 'DCEP' },
    'gas-off-card': { ran: 'C1', card: 'M21' },
    'amps-off-card': { ran: 170, min: 120, max: 160 },
    'volts-off-card': { ran: 19, max: 18 },
    'wire-feed-off-card': { ran: 63.5, min: 30 },
    'contact-tip-off-card': { ran: inch(1), min: inch(1 / 2), max: inch(3 / 4) },
    'travel-speed-off-card': { ran: 254 / 60, min: 2, max: 3 },
  }
  it.each(SETUP_CHECKS)('%s has a sentence in both languages and both units', (check) => {
    for (const severity of ['wrong', 'caution'] as const) for (const units of ['in', 'mm'] as const) {
      const finding = { check, severity, values: examples[check], source }
      const [english, spanish] = [explainSetup(finding, 'en', units), explainSetup(finding, 'es', units)]
      expect(english).toMatch(/\.$/)
      expect(spanish).not.toBe(english)
      expect(`${english}${spanish}`).not.toMatch(/[{}]|NaN|undefined/)
    }
  })
  it('speaks the reader’s units', () => {
    const say = (check: keyof typeof examples, units: 'in' | 'mm', locale: 'en' | 'es' = 'en'): string => explainSetup({ check, severity: 'caution', values: examples[check], source }, locale, units)
    expect(say('stick-out', 'in')).toBe('A stick-out of 1/2 in is outside the advised 3/4 in to 1 in.')
    expect(say('plate-too-thick', 'mm')).toBe('E71T-11 is commonly advised for plate up to 7.9 mm. This plate is 12.7 mm.')
    expect(say('polarity', 'in')).toBe('E7018 runs on DC, electrode positive or AC. It is set to DC, electrode negative.')
    expect(say('travel-speed-off-card', 'in')).toContain('10.0 in/min')
    expect(say('volts-off-card', 'mm', 'es')).toBe('Voltaje 19.0 V; la tarjeta de cabina dice como máximo 18.0 V.')
  })
  it('never shows what was run as the limit it is outside of', () => {
    const say = (check: keyof typeof examples, values: SetupCheck['values'], units: 'in' | 'mm'): string => explainSetup({ check, severity: 'caution', values, source }, 'en', units)
    expect(say('amps-off-card', { ran: 160.3, min: 120, max: 160 }, 'in')).toBe('Current 160.3 A; the booth card says 120 A to 160 A.')
    expect(say('volts-off-card', { ran: 18.04, max: 18 }, 'in')).toBe('Voltage 18.04 V; the booth card says at most 18.0 V.')
    expect(say('contact-tip-off-card', { ran: 19.06, max: inch(3 / 4) }, 'in')).toBe('Contact tip 0.7504 in from the work; the booth card says at most 3/4 in.')
    expect(say('travel-speed-off-card', { ran: 4.02, max: 4 }, 'mm')).toBe('Travel speed 4.02 mm/s; the booth card says at most 4.0 mm/s.')
  })
  it('does not speak with a value missing', () => {
    expect(() => explainSetup({ check: 'amps-off-card', severity: 'caution', values: {}, source }, 'en', 'in')).toThrow(RangeError)
    expect(() => explainSetup({ check: 'polarity', severity: 'wrong', values: {}, source }, 'en', 'in')).toThrow(RangeError)
  })
})

import { expect, it } from 'vitest'
import { readPassSoFar } from '@/lib/procedure/typed-pass'
import { passFigures } from '@/lib/reports/pass-figures'
import { blankPass, type PassForm } from '@/lib/schemas/passes'

const figures = (boxes: Partial<PassForm>, units: 'in' | 'mm' = 'in') => passFigures(readPassSoFar({ ...blankPass(), ...boxes }, units), 'FCAW-S', { locale: 'en', units })

it('works out travel, arc energy and heat input from what stands in the boxes', () => {
  // By hand: 6 in in 36 s is 10 in/min; 18 V × 150 A × 60 / 10 in/min = 16.2 kJ/in; × 0.8 (ISO/TR 17671-1) = 12.96.
  expect(figures({ length: '6', arcTime: '0:36', volts: '18', amps: '150' })).toEqual(['Travel 10.0 in/min', 'Arc energy 16.2 kJ/in', 'Heat input 13.0 kJ/in (arc energy × 0.8)'])
  // The same weld: 152.4 mm in 36 s is 4.23 mm/s; 2700 W / 4.233 mm/s = 0.638 kJ/mm.
  expect(figures({ length: '152.4', arcTime: '36 s', volts: '18', amps: '150' }, 'mm')).toEqual(['Travel 4.2 mm/s', 'Arc energy 0.64 kJ/mm', 'Heat input 0.51 kJ/mm (arc energy × 0.8)'])
})

it('says what it can, and nothing where something it takes is missing, unreadable or zero', () => {
  expect(figures({ length: '6', arcTime: '0:36' })).toEqual(['Travel 10.0 in/min'])
  for (const boxes of [{}, { length: '6' }, { arcTime: '36' }, { length: 'long', arcTime: '36' }, { length: '6', arcTime: '0:00' }, { length: '0', arcTime: '36' }, { length: '-6', arcTime: '36' }]) expect(figures(boxes)).toEqual([])
})

it('reads the settings of a pass as far as they can be read', () => {
  expect(readPassSoFar({ ...blankPass(), amps: '145', volts: 'lots', polarity: 'DCEN', gas: ' C1 ' }, 'in')).toEqual({
    amps: 145, volts: null, wireFeedMmPerS: null, contactTipToWorkMm: null, polarity: 'DCEN', gas: 'C1', arcSeconds: null, lengthMm: null,
  })
})

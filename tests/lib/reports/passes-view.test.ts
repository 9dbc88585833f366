import { describe, expect, it } from 'vitest'
import type { PassSettings } from '@/lib/procedure/booth-card'
import { passesView } from '@/lib/reports/passes-view'

const blank: PassSettings = { amps: null, volts: null, wireFeedMmPerS: null, contactTipToWorkMm: null, polarity: null, gas: null, arcSeconds: null, lengthMm: null }
const value = (pass: Partial<PassSettings>, key: string, units: 'in' | 'mm' = 'in') => passesView([{ ...blank, ...pass }], { locale: 'en', units }).passes[0]?.rows.find((row) => row.key === key)?.value

describe('the passes of a coupon', () => {
  // By hand: 6 in in 36 s is 10 in/min; 16.5 V · 145 A · 60 / 10 in/min = 14.4 kJ/in (AWS heat input, volts × amps × 60 ÷ travel speed).
  const run = { amps: 145, volts: 16.5, arcSeconds: 36, lengthMm: 152.4 }
  it('gives travel speed and heat input in the reader’s units', () => {
    expect(value(run, 'travelSpeed')).toBe('10.0 in/min')
    expect(value(run, 'heatInput')).toBe('14.4 kJ/in')
    expect(value(run, 'travelSpeed', 'mm')).toBe('4.2 mm/s')
    expect(value(run, 'heatInput', 'mm')).toBe('0.57 kJ/mm')
  })
  it('says what a figure still needs, and makes none up', () => {
    const view = passesView([{ ...blank, amps: 140, volts: 16 }], { locale: 'en', units: 'in' })
    expect(view.passes[0]?.missing).toEqual(['Travel speed needs the arc time and the length welded.'])
    expect(value({ amps: 140, volts: 16, arcSeconds: 0, lengthMm: 100 }, 'travelSpeed')).toBeUndefined()
    expect(passesView([{ ...blank, ...run, volts: null }], { locale: 'en', units: 'in' }).passes[0]?.missing).toEqual(['Heat input needs volts and amps too.'])
  })
  it('leaves out a pass nobody wrote down, and says when there is none at all', () => {
    expect(passesView([{ ...blank, ...run }, blank], { locale: 'en', units: 'in' }).passes.map(({ title }) => title)).toEqual(['Pass 1'])
    expect(passesView([blank], { locale: 'es', units: 'mm' })).toEqual({ passes: [], nothing: 'No se anotó ningún ajuste de esta probeta.', heatNote: null })
  })
})

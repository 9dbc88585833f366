import { expect, it } from 'vitest'
import { readClassification } from '@/lib/consumables/classification'
import { consumableSizesMm } from '@/lib/consumables/check-set-up-answers'
import { NO_ANSWERS, type SetUpAnswers } from '@/lib/consumables/set-up-answers'
import type { BoothCard, PassSettings } from '@/lib/procedure/booth-card'
import { readPassSoFar } from '@/lib/procedure/typed-pass'
import { setUpLines, type SetUpBasis } from '@/lib/reports/set-up-lines'
import { blankPass } from '@/lib/schemas/passes'

const IN = 25.4
const card: BoothCard = {
  polarity: 'DCEN', amps: { min: 120, max: 160 }, volts: { min: 16, max: 17.5 }, wireFeedMmPerS: { min: 90 * IN / 60, max: 120 * IN / 60 }, contactTipToWorkMm: { min: IN / 2, max: IN * 3 / 4 },
  travelSpeedMmPerS: { min: 4, max: 6 }, gas: null, gasFlowLPerMin: null, workAngleDeg: null, travelAngleDeg: null, travelDirection: 'drag', sidePauseSeconds: null, note: null,
}
const basis: SetUpBasis = {
  consumable: readClassification('E71T-11'), card,
  facts: { process: 'FCAW-S', position: '2F', progression: null, plateThicknessMm: IN / 4, passCount: 1, electrodeDiameterMm: 0.045 * IN },
}
const right: PassSettings = readPassSoFar({ ...blankPass(), polarity: 'DCEN', amps: '140', volts: '16.5', wireFeed: '100', stickOut: '5/8' }, 'in')
const lines = (pass: Partial<PassSettings> = {}, answers: Partial<SetUpAnswers> = {}, locale: 'en' | 'es' = 'en') =>
  setUpLines(basis, { ...right, ...pass }, { ...NO_ANSWERS, ...answers }, { locale, units: 'in' })

it('says nothing of a set-up that agrees, nor of settings left empty', () => {
  expect(lines()).toEqual([])
  expect(setUpLines(basis, readPassSoFar(blankPass(), 'in'), NO_ANSWERS, { locale: 'en', units: 'in' })).toEqual([])
})

it('says the polarity is wrong for the class before anything else, with why and who says so', () => {
  const [first, ...others] = lines({ polarity: 'DCEP', volts: 20 })
  expect(first?.severity).toBe('wrong')
  expect(first?.text).toContain('E71T-11 runs on DC, electrode negative')
  expect(first?.why).toMatch(/arc is harsh/)
  expect(first?.source).toMatch(/AWS A5\.20/)
  expect(others.map((line) => line.text)).toEqual(['Voltage 20.0 V; the booth card says 16.0 V to 17.5 V.'])
  expect(others[0]?.source).toContain('common practice, no source')
})

it('says each setting off the card once', () => {
  expect(lines({ wireFeedMmPerS: 150 * IN / 60 }).map((line) => line.text)).toEqual(['Wire feed 150 in/min; the booth card says 90 in/min to 120 in/min.'])
  expect(lines({ gas: 'C1' }).map((line) => line.text)).toEqual(['E71T-11 shields itself: weld without gas. C1 is set.'])
})

it('does not hold the travel speed of an arc not yet struck against the card', () => {
  expect(lines({ arcSeconds: 5, lengthMm: 150 })).toEqual([])
})

it('compares wire, rolls and position with the exercise', () => {
  expect(lines({}, { wireMm: 0.035 * IN }).map((line) => line.text)).toEqual(['The machine holds 0.035 in; this exercise is for 0.045 in.'])
  expect(lines({}, { rollMm: IN / 16 })[0]?.text).toBe('The drive rolls are for 1/16 in; the wire is 0.045 in.')
  expect(lines({}, { groove: 'v' })[0]?.text).toMatch(/commonly driven by knurled rolls/)
  expect(lines({}, { position: '3F' })[0]?.text).toBe('The coupon is set in 3F; this exercise is welded in 2F.')
  expect(lines({}, { wireMm: 1.2, rollMm: 1.2, groove: 'knurled', position: '2F' })).toEqual([]) // 1.2 mm is sold as 0.045 in
})

it('speaks Spanish', () => {
  expect(lines({}, { position: '3F' }, 'es')[0]?.text).toBe('La probeta está puesta en 3F; este ejercicio se suelda en 2F.')
})

it('offers the sizes of the process, the exercise’s own among them once', () => {
  const wires = consumableSizesMm({ process: 'FCAW-S', electrodeDiameterMm: 0.045 * IN })
  expect(wires.filter((mm) => Math.abs(mm - 0.045 * IN) < 0.08)).toHaveLength(1)
  expect(consumableSizesMm({ process: 'SMAW', electrodeDiameterMm: IN / 4 })).toContain(IN / 4)
  expect(wires).toEqual([...wires].sort((a, b) => a - b))
})

import { describe, expect, it } from 'vitest'
import type { BoothCard } from '@/lib/procedure/booth-card'
import type { ExerciseFacts } from '@/lib/procedure/exercise'
import { boothCardView } from '@/lib/reports/booth-card-view'

const silent: BoothCard = {
  polarity: 'DCEN', amps: null, volts: null, wireFeedMmPerS: null, contactTipToWorkMm: null, travelSpeedMmPerS: null, gas: null, gasFlowLPerMin: null,
  workAngleDeg: null, travelAngleDeg: null, travelDirection: null, sidePauseSeconds: null, note: null,
}
const card: BoothCard = {
  ...silent, amps: { min: 120, max: 160 }, volts: { min: 15.5, max: 17 }, wireFeedMmPerS: { min: 38.1, max: 46.566666 }, contactTipToWorkMm: { min: 12.7, max: 19.05 },
  travelSpeedMmPerS: { min: 3.3866666, max: 5.08 }, gasFlowLPerMin: { min: 16.517, max: 21.237 }, workAngleDeg: { min: 40, max: 45 }, travelAngleDeg: { min: 10, max: 20 },
  travelDirection: 'drag', sidePauseSeconds: { min: 0.5, max: 1 }, note: 'Watch the toes.',
}
const exercise: ExerciseFacts = {
  title: '2F lap', process: 'FCAW-S', joint: 'lap', weldType: 'fillet', position: '3F', progression: 'up', plateThicknessMm: 9.525, material: 'A36',
  electrodeClass: 'E71T-11', electrodeDiameterMm: 1.143, nominalLegMm: 6.35, lengthMm: 203.2, passCount: 2, stationCount: 5, gauge: 'in32', boothCard: card,
  criteria: { id: 'shop-bead', version: 1 },
}
const view = (change: Partial<ExerciseFacts> = {}, reader: Parameters<typeof boothCardView>[1] = { locale: 'en', units: 'in' }) => boothCardView({ ...exercise, ...change }, reader)
const values = (rows: readonly { readonly key: string; readonly value: string }[]): Record<string, string> => Object.fromEntries(rows.map(({ key, value }) => [key, value]))

describe('the settings', () => {
  it('are ranges in inches and cubic feet for those who read inches', () => {
    expect(values(view().settings)).toEqual({
      polarity: 'DCEN, electrode negative', amps: '120 A to 160 A', wireFeed: '90 in/min to 110 in/min', volts: '15.5 V to 17.0 V', stickOut: '1/2 in to 3/4 in', gas: 'none',
      gasFlow: '35 cfh to 45 cfh', workAngle: '40° to 45°', travelAngle: '10° to 20°, drag', travelSpeed: '8 in/min to 12 in/min', sidePause: '0.5 s to 1.0 s',
    })
  })

  it('are the same ranges in millimetres and litres for those who read millimetres', () => {
    expect(values(view({}, { locale: 'en', units: 'mm' }).settings)).toMatchObject({
      amps: '120 A to 160 A', wireFeed: '2.3 m/min to 2.8 m/min', stickOut: '12.7 mm to 19.1 mm', gasFlow: '17 L/min to 21 L/min', travelSpeed: '3.4 mm/s to 5.1 mm/s',
    })
  })

  it('are in the reader’s language', () => {
    const { settings, facts } = view({}, { locale: 'es', units: 'mm' })
    expect(values(settings)['amps']).toBe('120 A a 160 A')
    for (const { term, value } of [...settings, ...facts]) expect(`${term} ${value}`).not.toMatch(/\b(to|and|electrode|fillet|welded)\b/)
  })

  it('may have one value or one open end', () => {
    const open = { ...silent, amps: { min: 140, max: 140 }, volts: { min: 15, max: null }, contactTipToWorkMm: { min: null, max: 19.05 } }
    expect(values(view({ boothCard: open }).settings)).toMatchObject({ amps: '140 A', volts: '15.0 V or more', stickOut: 'up to 3/4 in' })
  })

  it('are left out where the card says nothing, and never shown as zero', () => {
    expect(Object.keys(values(view({ boothCard: silent }).settings))).toEqual(['polarity', 'gas'])
    expect(values(view({ boothCard: { ...silent, amps: { min: null, max: null }, travelDirection: 'push' } }).settings)).toEqual({ polarity: 'DCEN, electrode negative', gas: 'none', travelAngle: 'push' })
  })

  it('name no gas for a stick electrode, and the gas by its designation where there is one', () => {
    expect(values(view({ process: 'SMAW', electrodeClass: 'E7018', boothCard: { ...silent, polarity: 'DCEP' } }).settings)).toEqual({ polarity: 'DCEP, electrode positive' })
    expect(values(view({ process: 'GMAW', electrodeClass: 'ER70S-6', boothCard: { ...silent, polarity: 'DCEP', gas: 'M21' } }).settings)).toMatchObject({ gas: 'M21' })
  })
})

describe('the facts', () => {
  it('say what is welded, in both units', () => {
    expect(values(view().facts)).toEqual({
      process: 'FCAW-S', joint: 'lap, fillet', position: '3F, welded upward', plate: '3/8 in, A36', consumable: 'E71T-11, 0.045 in', size: '1/4 in', length: '8 in', passes: '2',
    })
    expect(values(view({}, { locale: 'en', units: 'mm' }).facts)).toMatchObject({ plate: '9.5 mm, A36', consumable: 'E71T-11, 1.1 mm', length: '203.2 mm' })
  })

  it('leave out what is not given', () => {
    const facts = values(view({ electrodeDiameterMm: null, nominalLegMm: null, progression: null }).facts)
    expect(facts).not.toHaveProperty('size')
    expect([facts['consumable'], facts['position']]).toEqual(['E71T-11', '3F'])
  })
})

describe('the checks', () => {
  const suited = { position: '2F', progression: null, plateThicknessMm: 6.35 } as const

  it('find nothing on a card that agrees with its wire', () => {
    expect(view({ ...suited, boothCard: silent }).checks).toEqual([])
    expect(view().note).toBe('Watch the toes.')
  })

  it('say what goes against the class of the wire, in the reader’s language', () => {
    expect(view({ ...suited, boothCard: { ...silent, polarity: 'DCEP' } }).checks).toEqual(['E71T-11 runs on DC, electrode negative. It is set to DC, electrode positive.'])
    const [spanish, ...rest] = view({ ...suited, boothCard: { ...silent, polarity: 'DCEP' } }, { locale: 'es', units: 'mm' }).checks
    expect(rest).toEqual([])
    expect(spanish).toMatch(/^E71T-11 .*negativo/)
  })

  it('say what goes against the exercise: a wire for thin plate, welded downward', () => {
    expect(view({ boothCard: silent }).checks).toEqual(['E71T-11 is not classified for welding upward. 3F is to be welded up.', 'E71T-11 is commonly advised for plate up to 5/16 in. This plate is 3/8 in.'])
  })
})

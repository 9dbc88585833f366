import { expect, it } from 'vitest'
import { drawBeadStrip } from '@/lib/reports/bead-strip'
import { stripSoFar } from '@/lib/reports/strip-so-far'
import { blankReadings } from '@/lib/schemas/readings'

const frame = { lengthMm: 152.4, position: '2F', widthBand: null, units: 'in' } as const
const form = blankReadings(['1/2', '1 1/2', '2 1/2'])
const spot = { kind: 'undercut', toe: 'A', at: '2', length: '', depth: '', diameter: '', height: '' } as const

it('draws what can be read, and leaves out what is empty or unreadable', () => {
  const stations = form.stations.map((row, index) => ({ ...row, width: ['7/16', 'wide', ''][index] ?? '' }))
  const strip = stripSoFar({ stations, indications: [spot, { ...spot, at: 'somewhere' }] }, frame, 'en')
  expect(strip.inspection.stations).toEqual([{ atMm: 12.7, widthMm: expect.closeTo(11.1125, 9) }, { atMm: expect.closeTo(38.1, 9) }, { atMm: 63.5 }])
  expect(strip.inspection.indications).toEqual([{ kind: 'undercut', atMm: 50.8, toe: 'A' }])
})

it('always gives something that can be drawn: off the weld, past its end, two at one place', () => {
  const stations = ['9', '1', '1', '6'].map((at) => ({ ...(form.stations[0] ?? { at }), at, width: '3/8' })) as typeof form.stations
  const strip = stripSoFar({ stations, indications: [{ ...spot, at: '5', length: '4' }, { ...spot, at: '7' }] }, frame, 'es')
  expect(strip.inspection.stations.map((row) => row.atMm)).toEqual([25.4, expect.closeTo(152.4, 9)])
  expect(strip.inspection.indications).toEqual([{ kind: 'undercut', atMm: 127, lengthMm: expect.closeTo(25.4, 9), toe: 'A' }])
  expect(drawBeadStrip(strip, 'narrow').marks).toHaveLength(1)
})

// Measuring again after a look was submitted.
import { describe, expect, it } from 'vitest'
import { secondMeasurement } from '@/lib/measure/second-measurement'

const WELD = { lengthMm: 152.4, position: '2F' }
const READER = { units: 'mm', locale: 'es' } as const

describe('a second measurement', () => {
  it('has the stations of the look from the start of the weld on, each under its own row, and what was submitted there', () => {
    const stations = [{ atMm: 100, widthMm: 9 }, { atMm: 20 }, { atMm: 60, widthMm: 0 }]
    expect(secondMeasurement({ weld: WELD, inspection: { stations, indications: [] }, widthBand: { minMm: 8, maxMm: null }, reader: READER })).toEqual({
      task: { units: 'mm', weldLengthMm: 152.4, band: { minMm: 8, maxMm: null }, places: [{ row: 1, atMm: 20 }, { row: 2, atMm: 60 }, { row: 0, atMm: 100 }] },
      submittedMm: [9, null, 0],
    })
  })

  it('is none without a station', () => {
    expect(secondMeasurement({ weld: WELD, inspection: { stations: [], indications: [] }, widthBand: null, reader: READER })).toBeNull()
  })
})

// What a photo fills in a form: the rows its widths belong to, in the reader's units, and nothing else.
import { describe, expect, it } from 'vitest'
import { uncertaintyText } from '@/lib/measure/uncertainty-text'
import { photoTask, withWidths } from '@/lib/measure/widths-into-form'
import { blankReadings } from '@/lib/schemas/readings'

const frame = { units: 'in', gauge: { unit: 'in', denominator: 32 }, lengthMm: 152.4, position: '2F', offered: [], pads: {} } as unknown as Parameters<typeof photoTask>[1]

describe('widths of a photo', () => {
  it('go to stations that have a place on the weld, in the order along it', () => {
    const task = photoTask(blankReadings(['5', 'nowhere', '1', '', '9']), frame)
    expect(task.places.map(({ row, atMm }) => [row, Number(atMm.toFixed(6))])).toEqual([[2, 25.4], [0, 127]])
    expect(task.band).toBeNull()
  })

  it('fill the width of their own row, in the reader’s units, and leave every other box', () => {
    const before = blankReadings(['5', '1', '3'])
    const typed = { ...before, stations: before.stations.map((station) => ({ ...station, legA: '1/4', width: '3/8' })) }
    const after = withWidths(typed, photoTask(typed, frame), [{ station: 0, widthMm: 9.525 + 1.5875 }, { station: 2, widthMm: 10 }])
    expect(after.stations.map(({ at, width, legA }) => [at, width, legA])).toEqual([['5', '25/64', '1/4'], ['1', '7/16', '1/4'], ['3', '3/8', '1/4']])
  })
})

it('states an uncertainty of two standard deviations in decimals of the reader’s unit', () => {
  expect([uncertaintyText(0.1, 'mm'), uncertaintyText(0.254, 'in')]).toEqual(['0.20 mm', '0.020 in'])
})

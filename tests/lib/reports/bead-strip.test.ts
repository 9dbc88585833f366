import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { drawBeadStrip, type BeadStripInput, type StripSize } from '@/lib/reports/bead-strip'
import { markShape } from '@/lib/reports/bead-marks'
import { ruler } from '@/lib/reports/ruler'
import { INDICATION_KINDS, type Indication, type Station } from '@/lib/scoring/types'

const SIZES: readonly StripSize[] = ['narrow', 'wide', 'row']

/** A 2F weld 8 in long, five to six diameters of 0.045 in wire allowed, five clean stations, unless told otherwise. */
function aStrip(over: Partial<BeadStripInput> & { readonly stations?: readonly Station[]; readonly indications?: readonly Indication[] } = {}): BeadStripInput {
  const { stations = [20, 60, 100, 140, 180].map((atMm) => ({ atMm, widthMm: 6.35 })), indications = [], ...rest } = over
  return {
    weld: { lengthMm: 203.2, position: '2F' },
    inspection: { stations, indications },
    widthBand: { minMm: 5.715, maxMm: 6.858 },
    reader: { units: 'in', locale: 'en' },
    ...rest,
  }
}

const stationsOn = (lengthMm: number) => fc.uniqueArray(
  fc.record({ atMm: fc.integer({ min: 0, max: lengthMm }), widthMm: fc.option(fc.double({ min: 1, max: 25, noNaN: true }), { nil: undefined }) }),
  { selector: (station) => station.atMm, maxLength: 12 },
).map((all): Station[] => all.map(({ atMm, widthMm }) => (widthMm === undefined ? { atMm } : { atMm, widthMm })))

describe('the toe lines', () => {
  it('stand as far apart at each station as the width there, times the stated exaggeration', () => {
    fc.assert(fc.property(stationsOn(200), fc.constantFrom(...SIZES), (stations, size) => {
      const strip = drawBeadStrip(aStrip({ stations }), size)
      const measured = stations.filter((station) => station.widthMm !== undefined)
      expect(strip.readings).toHaveLength(measured.length)
      for (const reading of strip.readings) {
        const widthMm = measured.find((station) => station.atMm === reading.atMm)?.widthMm ?? Number.NaN
        expect(reading.yB - reading.yA).toBeCloseTo(widthMm * strip.pxPerMm * strip.exaggeration, 1)
        expect((reading.yA + reading.yB) / 2).toBeCloseTo(strip.axisY, 1)
      }
    }))
  })

  it('run from the first measured station to the last and no further', () => {
    const strip = drawBeadStrip(aStrip(), 'wide')
    const xs = strip.toes.flatMap(({ d }) => [...d.matchAll(/(-?[\d.]+),/g)].map((match) => Number(match[1])))
    expect(Math.min(...xs)).toBe(strip.readings[0]?.x)
    expect(Math.max(...xs)).toBe(strip.readings.at(-1)?.x)
  })

  it('pass through every reading', () => {
    const stations = [20, 60, 100, 140].map((atMm, i) => ({ atMm, widthMm: 5 + i }))
    const strip = drawBeadStrip(aStrip({ stations }), 'wide')
    for (const { x, yA, yB } of strip.readings) {
      expect(strip.toes.some(({ d }) => d.includes(`${x},${yA}`))).toBe(true)
      expect(strip.toes.some(({ d }) => d.includes(`${x},${yB}`))).toBe(true)
    }
  })

  it('are unsure over a station that was not measured, which is never drawn as a width of 0', () => {
    const strip = drawBeadStrip(aStrip({ stations: [{ atMm: 20, widthMm: 6 }, { atMm: 60 }, { atMm: 100, widthMm: 6 }, { atMm: 140, widthMm: 6 }] }), 'wide')
    expect(strip.toes.map((toe) => toe.sure)).toEqual([false, false, true, true])
    expect(strip.gaps.map((gap) => gap.atMm)).toEqual([60])
    expect(strip.readings.map((reading) => reading.atMm)).toEqual([20, 100, 140])
    expect(strip.words.description).toContain('Width was not measured at 2 3/8 in.')
  })

  it('can be drawn on a seam twenty metres long, read every millimetre', () => {
    const stations = [0, 1, 2, 3].map((atMm) => ({ atMm, widthMm: 6 + atMm }))
    expect(drawBeadStrip(aStrip({ weld: { lengthMm: 20_000, position: '2F' }, stations }), 'row').readings).toHaveLength(4)
  })

  it('are not drawn from a single width, or from none', () => {
    expect(drawBeadStrip(aStrip({ stations: [{ atMm: 60, widthMm: 6 }] }), 'wide')).toMatchObject({ toes: [], body: null, readings: [{ atMm: 60 }] })
    const none = drawBeadStrip(aStrip({ stations: [] }), 'wide')
    expect(none).toMatchObject({ toes: [], body: null, readings: [] })
    expect(none.words.noWidths).toBe('Width was not measured.')
    expect(none.band).toHaveLength(2)
  })
})

it('draws the same whatever the order of the stations', () => {
  fc.assert(fc.property(stationsOn(200), (stations) => {
    expect(drawBeadStrip(aStrip({ stations: [...stations].reverse() }), 'wide')).toEqual(drawBeadStrip(aStrip({ stations }), 'wide'))
  }))
})

describe('the scale', () => {
  it('is the same for a phone, a desk and a row, and is said', () => {
    const strips = SIZES.map((size) => drawBeadStrip(aStrip(), size))
    expect(strips.map((strip) => strip.exaggeration)).toEqual([4, 4, 4])
    expect(strips[0]?.words.scale).toBe('Width drawn 4 times larger than length.')
    expect(strips[0]?.words.description).toContain('Width drawn 4 times larger than length.')
  })

  it('is not exaggerated where the bead is wide enough to read, and that is said too', () => {
    const strip = drawBeadStrip(aStrip({ weld: { lengthMm: 150, position: '3G' }, widthBand: null, stations: [{ atMm: 70, widthMm: 20 }] }), 'wide')
    expect(strip.exaggeration).toBe(1)
    expect(strip.words.scale).toBe('Width and length drawn to the same scale.')
  })

  it('shrinks before the drawing grows out of its place', () => {
    fc.assert(fc.property(fc.double({ min: 1, max: 80, noNaN: true }), (widthMm) => {
      const strip = drawBeadStrip(aStrip({ stations: [{ atMm: 20, widthMm }, { atMm: 60, widthMm: 6 }] }), 'wide')
      expect(Number.isInteger(strip.exaggeration)).toBe(true)
      expect(strip.exaggeration).toBeGreaterThanOrEqual(1)
      expect(strip.height).toBeLessThan(strip.width)
    }))
  })
})

describe('the allowed band', () => {
  // 5 x 0.045 in = 5.715 mm and 6 x 0.045 in = 6.858 mm. Limits are inclusive.
  it.each([
    [5.714, false], [5.715, true], [6.35, true], [6.858, true], [6.859, false],
  ])('of 5.715 to 6.858 mm: a width of %s mm is inside: %s', (widthMm, inside) => {
    expect(drawBeadStrip(aStrip({ stations: [{ atMm: 60, widthMm }] }), 'wide').readings[0]?.inBand).toBe(inside)
  })

  it('lies where a toe of an allowed width lies', () => {
    const [upper, lower] = drawBeadStrip(aStrip(), 'wide').band
    const at = (widthMm: number) => drawBeadStrip(aStrip({ stations: [{ atMm: 60, widthMm }] }), 'wide').readings[0]
    expect(upper?.y).toBeCloseTo(at(6.858)?.yA ?? 0, 1)
    expect((upper?.y ?? 0) + (upper?.height ?? 0)).toBeCloseTo(at(5.715)?.yA ?? 0, 1)
    expect(lower?.y).toBeCloseTo(at(5.715)?.yB ?? 0, 1)
  })

  it('is not judged where the criteria set none', () => {
    const strip = drawBeadStrip(aStrip({ widthBand: null }), 'wide')
    expect(strip.band).toEqual([])
    expect(strip.readings.every((reading) => reading.inBand === null)).toBe(true)
    expect(strip.words.band).toBeNull()
  })

  it('may be open at one end', () => {
    expect(drawBeadStrip(aStrip({ widthBand: { minMm: null, maxMm: 6.35 } }), 'wide').words.band).toBe('Allowed width, 1/4 in or less')
    expect(drawBeadStrip(aStrip({ widthBand: { minMm: 6.35, maxMm: null } }), 'wide').words.band).toBe('Allowed width, 1/4 in or more')
  })
})

describe('indications', () => {
  it('lie on their toe, on the bead, or on the plate beside it', () => {
    const strip = drawBeadStrip(aStrip({ indications: [
      { kind: 'undercut', atMm: 60, lengthMm: 10, toe: 'A' }, { kind: 'undercut', atMm: 60, lengthMm: 10, toe: 'B' },
      { kind: 'pore', atMm: 60 }, { kind: 'spatter', atMm: 60 },
    ] }), 'wide')
    const [upper, lower, pore, spatter] = strip.marks
    const toe = strip.readings[1]
    expect(upper?.y).toBeCloseTo(toe?.yA ?? 0, 1)
    expect(lower?.y).toBeCloseTo(toe?.yB ?? 0, 1)
    expect(pore?.y).toBe(strip.axisY)
    expect(spatter?.y).toBeLessThan(toe?.yA ?? 0)
  })

  it('run from where they start, and end with the weld', () => {
    const strip = drawBeadStrip(aStrip({ indications: [{ kind: 'undercut', atMm: 183.2, lengthMm: 500, toe: 'A' }] }), 'wide')
    expect(strip.marks[0]?.x).toBeCloseTo(strip.left + 193.2 * strip.pxPerMm, 1)
  })

  it('have a shape of their own for every kind, without colour', () => {
    const shapes = INDICATION_KINDS.map((kind) => JSON.stringify(markShape(kind, { from: 10, to: 40, line: () => 20, outward: -1 })))
    expect(new Set(shapes).size).toBe(INDICATION_KINDS.length)
    expect(shapes.join('')).not.toContain('NaN')
  })

  it('are listed by kind with their place, toe and length', () => {
    const { words } = drawBeadStrip(aStrip({ indications: [
      { kind: 'pore', atMm: 127 }, { kind: 'undercut', atMm: 50.8, lengthMm: 22.225, toe: 'B' }, { kind: 'pore', atMm: 25.4 },
    ] }), 'wide')
    expect(words.key).toEqual([
      { kind: 'undercut', text: 'Undercut: lower toe, 2 in, 7/8 in long' },
      { kind: 'pore', text: 'Pore (2): 1 in; 5 in' },
    ])
    expect(words.description).toContain('Pore at 1 in, undercut on the lower toe at 2 in, 7/8 in long, and pore at 5 in.')
  })
})

describe('the labels', () => {
  it('never crowd each other, and go to readings outside the band first', () => {
    const stations = Array.from({ length: 21 }, (_, i) => ({ atMm: i * 10, widthMm: i === 11 ? 9 : 6.35 }))
    for (const size of ['narrow', 'wide'] as const) {
      const strip = drawBeadStrip(aStrip({ stations }), size)
      const shown = strip.readings.filter((reading) => reading.label !== null)
      expect(shown.map((reading) => reading.atMm)).toContain(110)
      shown.slice(1).forEach((reading, i) => expect(reading.x - (shown[i]?.x ?? 0)).toBeGreaterThanOrEqual(50))
    }
  })

  it('leave a row free of text', () => {
    const strip = drawBeadStrip(aStrip({ rejected: [{ fromMm: 0, toMm: 50, rule: 'Width' }] }), 'row')
    expect(strip.readings.every((reading) => reading.label === null)).toBe(true)
    expect([strip.ruler, strip.rejected, strip.labelY]).toEqual([[], [], null])
  })

  it('number the rejected stretches, one under another where they overlap', () => {
    const strip = drawBeadStrip(aStrip({ rejected: [
      { fromMm: 0, toMm: 200, rule: 'Width' }, { fromMm: 50, toMm: 80, rule: 'Undercut' }, { fromMm: 100, toMm: 120, rule: 'Cracks' },
    ] }), 'wide')
    const [first, second, third] = strip.rejected
    expect(strip.rejected.map((each) => each.number)).toEqual([1, 2, 3])
    expect(second?.y).toBeGreaterThan(first?.y ?? 0)
    expect(third?.y).toBe(second?.y)
    expect(third?.y).toBeLessThan(strip.rulerY)
    expect(strip.words.rejected[1]).toBe('Undercut, 1 15/16 in to 3 1/8 in')
  })
})

describe('the rule under the weld', () => {
  it.each([
    ['in', 203.2, ['0 in', '2 in', '4 in', '6 in', '8 in']],
    ['mm', 150, ['0 mm', '50 mm', '100 mm', '150.0 mm']],
  ] as const)('in %s over %s mm is labelled %j', (units, lengthMm, labels) => {
    expect(ruler({ lengthMm, units, left: 8, right: 336, labelRoom: 50 }).flatMap((tick) => tick.label ?? [])).toEqual(labels)
  })

  it('always labels both ends and never crowds its labels', () => {
    fc.assert(fc.property(fc.double({ min: 1, max: 20_000, noNaN: true }), fc.constantFrom('in' as const, 'mm' as const), (lengthMm, units) => {
      const labelled = ruler({ lengthMm, units, left: 10, right: 694, labelRoom: 60 }).filter((tick) => tick.label !== null)
      expect(labelled[0]?.x).toBe(10)
      expect(labelled.at(-1)?.x).toBe(694)
      labelled.slice(1).forEach((tick, i) => expect(tick.x - (labelled[i]?.x ?? 0)).toBeGreaterThanOrEqual(59.9))
    }))
  })
})

it('speaks the reader’s language and units, and names toes as the position does', () => {
  const strip = drawBeadStrip(aStrip({
    weld: { lengthMm: 200, position: '3F' },
    stations: [{ atMm: 50, widthMm: 6 }],
    indications: [{ kind: 'undercut', atMm: 100, toe: 'A' }],
    reader: { units: 'mm', locale: 'es' },
  }), 'wide')
  expect(strip.words.ends).toBe('Empieza a la izquierda; pie izquierdo arriba.')
  expect(strip.words.description).toContain('Socavado en el pie izquierdo a 100 mm.')
})

it.each([
  ['a weld without length', { weld: { lengthMm: 0, position: '2F' } }],
  ['a station beyond the weld', { stations: [{ atMm: 204, widthMm: 6 }] }],
  ['a station before it', { stations: [{ atMm: -1, widthMm: 6 }] }],
  ['an indication beyond it', { indications: [{ kind: 'pore', atMm: 300 } as const] }],
  ['a restart that is no number', { restartsMm: [Number.NaN] }],
  ['a negative width', { stations: [{ atMm: 20, widthMm: -6 }] }],
  ['a width without end', { stations: [{ atMm: 20, widthMm: Infinity }] }],
  ['two widths at one place', { stations: [{ atMm: 20, widthMm: 6 }, { atMm: 20, widthMm: 7 }] }],
  ['a band that is no size', { widthBand: { minMm: Number.NaN, maxMm: 7 } }],
  ['a rejected stretch off the weld', { rejected: [{ fromMm: 0, toMm: 999, rule: 'Width' }] }],
])('refuses %s', (_, over) => {
  expect(() => drawBeadStrip(aStrip(over), 'wide')).toThrow(RangeError)
})

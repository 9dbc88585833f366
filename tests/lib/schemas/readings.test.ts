// Readings as typed become millimetres and keep what was typed; an empty box is absent, a 0 is 0, and nothing that passes can fail to be judged.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { everyNumber } from '../../support/every-number'
import { allCriteria } from '@/lib/criteria/catalogue'
import { stationPlaces } from '@/lib/procedure/exercise'
import { blankReadings, readingsSchema, readStoredReadings, STATION_BOXES, stationBoxOf, type ReadingsForm, type ReadingsFrame } from '@/lib/schemas/readings'
import { scoreInspection } from '@/lib/scoring/score-inspection'
import { INDICATION_KINDS } from '@/lib/scoring/types'
import { formatForReader } from '@/lib/units/display'

const frame = (given: Partial<ReadingsFrame> = {}): ReadingsFrame => ({ locale: 'en', units: 'in', lengthMm: 203.2, gaugeResolutionMm: 0.79375, ...given })
const oneStation = (boxes: Partial<ReadingsForm['stations'][number]>): ReadingsForm => {
  const blank = blankReadings(['4'])
  return { ...blank, stations: blank.stations.map((row) => ({ ...row, ...boxes })) }
}
const oneIndication = (boxes: Partial<ReadingsForm['indications'][number]>): ReadingsForm =>
  ({ ...blankReadings([]), indications: [{ kind: 'undercut', toe: null, at: '4', length: '', depth: '', diameter: '', height: '', ...boxes }] })
const complaints = (form: unknown, of = frame()): Record<string, string> => {
  const parsed = readingsSchema(of).safeParse(form)
  return parsed.success ? {} : Object.fromEntries(parsed.error.issues.map((issue) => [issue.path.join('.'), issue.message]))
}

const units = fc.constantFrom('in' as const, 'mm' as const)
/** Welds from a thumb's width to a yard, to the hundredth of a millimetre. */
const weldLength = fc.integer({ min: 2500, max: 100_000 }).map((hundredths) => hundredths / 100)

describe('a station', () => {
  it('of empty boxes holds its place and nothing else', () => {
    const { inspection } = readingsSchema(frame()).parse(oneStation({}))
    expect(inspection.stations).toEqual([{ atMm: expect.closeTo(101.6, 9) }])
  })

  it('keeps every 0 as 0', () => {
    const zeros = Object.fromEntries(STATION_BOXES.map((box) => [box, '0'])) as Record<(typeof STATION_BOXES)[number], string>
    const [station] = readingsSchema(frame()).parse(oneStation(zeros)).inspection.stations
    const { atMm: _at, ...sizes } = station!
    expect(Object.values(sizes)).toEqual(STATION_BOXES.map(() => 0))
  })

  it('reads a toe angle in degrees, up to a straight line', () => {
    expect(readingsSchema(frame()).parse(oneStation({ toeAngle: '112.5°' })).inspection.stations[0]).toMatchObject({ toeAngleDeg: 112.5 })
    expect(complaints(oneStation({ toeAngle: '180' }))).toEqual({})
    expect(complaints(oneStation({ toeAngle: '181' }))).toEqual({ 'stations.0.toeAngle': '181 is more than this weld could have. The most taken here is 180°.' })
    expect(complaints(oneStation({ toeAngle: '1/4 in' }))).toEqual({ 'stations.0.toeAngle': '“1/4 in” is not a number with the right unit. Write it like 135°.' })
  })

  it('names the box of each field, and refuses a field that has none', () => {
    expect([stationBoxOf('widthMm'), stationBoxOf('legAMm'), stationBoxOf('toeAngleDeg')]).toEqual(['width', 'legA', 'toeAngle'])
    expect(() => stationBoxOf('atMm' as 'widthMm')).toThrow(RangeError)
  })

  it('that waited on a device since before some boxes came is taken, those boxes not measured', () => {
    const { at, width, legA, legB, throat, convexity, reinforcement, penetration, rootConcavity, misalignment, underfill } = blankReadings(['4']).stations[0]!
    const before = { at, width: '1/4', legA, legB, throat, convexity, reinforcement, penetration, rootConcavity, misalignment, underfill }
    const sent = readingsSchema(frame()).parse({ ...blankReadings([]), stations: [before] })
    expect(sent.inspection.stations).toEqual([{ atMm: expect.closeTo(101.6, 9), widthMm: expect.closeTo(6.35, 9) }])
    expect(width).toBe('')
    const stored = readStoredReadings({ ...sent, typed: { stations: [before], indications: [] } })
    expect(stored.typed.stations[0]).toMatchObject({ width: '1/4', rootWidth: '', toeAngle: '' })
  })

  it('keeps a box of spaces as not measured', () => {
    expect(readingsSchema(frame()).parse(oneStation({ width: '   ' })).inspection.stations[0]).not.toHaveProperty('widthMm')
  })

  it.each([['in', '5/16', 7.9375], ['in', '.312', 7.9248], ['in', '8 mm', 8], ['mm', '8', 8], ['mm', '8,5 mm', 8.5], ['mm', '5/16 in', 7.9375], ['in', '⅜', 9.525], ['in', '1/4"', 6.35]] as const)(
    'read in %s turns %s into %f mm', (of, typed, expected) => {
      const { inspection, units: stored, typed: boxes } = readingsSchema(frame({ units: of })).parse(oneStation({ width: typed }))
      expect(inspection.stations[0]?.widthMm).toBeCloseTo(expected, 9)
      expect([stored, boxes.stations[0]?.width]).toEqual([of, typed])
    })

  it('takes sizes up to 75 mm and depths up to 25 mm, and not a hair more', () => {
    expect(complaints(oneStation({ width: '75 mm', convexity: '25 mm' }))).toEqual({})
    expect(complaints(oneStation({ width: '75.01 mm', convexity: '25.01 mm' }))).toEqual({
      'stations.0.width': '75.01 mm is more than this weld could have. The most taken here is 2 61/64 in.',
      'stations.0.convexity': '25.01 mm is more than this weld could have. The most taken here is 63/64 in.',
    })
  })

  it('shows the same limits in millimetres to those who read millimetres, in their language', () => {
    expect(complaints(oneStation({ width: '80' }), frame({ units: 'mm', locale: 'es' }))).toEqual({ 'stations.0.width': '80 es más de lo que esta soldadura podría tener. Lo máximo aquí es 75.0 mm.' })
  })

  it('is told about every box that is wrong, not only the first', () => {
    expect(Object.keys(complaints(oneStation({ at: 'here', width: 'wide', legA: '-1', throat: '1/0' })))).toEqual(['stations.0.at', 'stations.0.width', 'stations.0.legA', 'stations.0.throat'])
  })

  it('lies at a place of its own, whatever unit it was typed in', () => {
    const places = (...at: string[]) => Object.keys(complaints(blankReadings(at)))
    expect(places('1', '2', '3')).toEqual([])
    expect(places('1', '2', '2')).toEqual(['stations.2.at'])
    expect(places('3', '76.2 mm')).toEqual(['stations.1.at'])
    expect(places('.5', '1/2', '12.7 mm')).toEqual(['stations.1.at', 'stations.2.at'])
    expect(places('0', '0.001 mm'), 'a thousandth apart is apart').toEqual([])
  })

  it('may lie at the place the screen shows for the end of any weld', () => {
    fc.assert(fc.property(weldLength, units, (lengthMm, of) => {
      const { inspection } = readingsSchema(frame({ lengthMm, units: of })).parse(blankReadings([formatForReader(lengthMm, of)]))
      const at = inspection.stations[0]!.atMm
      return at <= lengthMm && at >= lengthMm - 0.13
    }))
  })

  it('lies where the form put it, for every length and count', () => {
    fc.assert(fc.property(weldLength, fc.integer({ min: 1, max: 12 }), units, (lengthMm, count, of) => {
      const places = stationPlaces(lengthMm, count)
      const { inspection } = readingsSchema(frame({ lengthMm, units: of })).parse(blankReadings(places.map((place) => formatForReader(place, of))))
      return inspection.stations.every((station, index) => Math.abs(station.atMm - places[index]!) <= 0.13)
    }))
  })

  it('is refused past the end by more than the screen rounds', () => {
    expect(complaints(blankReadings(['203.32 mm']))).toEqual({})
    expect(complaints(blankReadings(['203.4 mm']))).toEqual({ 'stations.0.at': 'The weld is 8 in long; 203.4 mm is past its end.' })
    expect(complaints(blankReadings(['-1']))).toEqual({ 'stations.0.at': '“-1” is not a length. Write it like 5/16, .312 or 8 mm.' })
  })
})

describe('an indication', () => {
  it('keeps only what was measured, and its toe when one was named', () => {
    expect(readingsSchema(frame()).parse(oneIndication({ depth: '1 mm' })).inspection.indications).toEqual([{ kind: 'undercut', atMm: expect.closeTo(101.6, 9), depthMm: 1 }])
    expect(readingsSchema(frame()).parse(oneIndication({ toe: 'B', length: '0' })).inspection.indications).toEqual([{ kind: 'undercut', atMm: expect.closeTo(101.6, 9), lengthMm: 0, toe: 'B' }])
  })

  it('may run to the end and not past it', () => {
    expect(readingsSchema(frame()).parse(oneIndication({ at: '7', length: '1' })).inspection.indications[0]?.lengthMm).toBeCloseTo(25.4, 9)
    expect(complaints(oneIndication({ at: '7', length: '1 1/16' }))).toEqual({ 'indications.0.length': 'From 7 in this would run past the end of the weld, which is 8 in long.' })
  })

  it('that starts at the shown place and runs the shown rest of any weld is taken, and ends inside', () => {
    fc.assert(fc.property(weldLength, fc.double({ min: 0, max: 1, noNaN: true }), units, (lengthMm, share, of) => {
      const at = formatForReader(lengthMm * share, of)
      const parsed = readingsSchema(frame({ lengthMm, units: of })).safeParse(oneIndication({ at, length: '0' }))
      const [indication] = parsed.success ? parsed.data.inspection.indications : []
      return indication !== undefined && indication.atMm + (indication.lengthMm ?? 0) <= lengthMm
    }))
  })

  it('is one of the kinds there are', () => {
    for (const kind of INDICATION_KINDS) expect(complaints(oneIndication({ kind }))).toEqual({})
    expect(complaints(oneIndication({ kind: 'dent' as never }))).toEqual({ 'indications.0.kind': 'Choose one.' })
    expect(Object.keys(complaints(oneIndication({ toe: 'C' as never })))).toEqual(['indications.0.toe'])
  })
})

describe('the whole', () => {
  it('holds sixty stations and two hundred indications, and no more', () => {
    const stations = (count: number) => blankReadings(Array.from({ length: count }, (_, index) => `${index} mm`))
    const indications = (count: number): ReadingsForm => ({ ...blankReadings([]), indications: Array.from({ length: count }, () => oneIndication({}).indications[0]!) })
    expect(complaints(stations(60))).toEqual({})
    expect(complaints(stations(61))).toEqual({ stations: 'That is more than can be kept: at most 60.' })
    expect(complaints(indications(200))).toEqual({})
    expect(complaints(indications(201))).toEqual({ indications: 'That is more than can be kept: at most 200.' })
  })

  it('with nothing filled in is taken as nothing measured', () => {
    const { inspection } = readingsSchema(frame()).parse(blankReadings([]))
    expect(inspection).toEqual({ stations: [], indications: [], lookedFor: [], cratersFilled: null, fusionComplete: null, gaugeResolutionMm: 0.79375 })
  })

  it.each([[null], [undefined], [7], ['text'], [[]], [{}], [{ ...blankReadings([]), extra: 1 }], [{ ...blankReadings([]), cratersFilled: 'yes' }], [{ ...blankReadings([]), stations: null }]])('is refused when it is %o', (form) => {
    expect(readingsSchema(frame()).safeParse(form).success).toBe(false)
  })
})

const typedSize = fc.oneof(fc.constant(''), fc.constant('0'), fc.integer({ min: 0, max: 40 }).map((sixteenths) => `${sixteenths}/16`), fc.integer({ min: 0, max: 2500 }).map((hundredths) => `${hundredths / 100} mm`))
const typedAngle = fc.oneof(fc.constant(''), fc.integer({ min: 0, max: 1800 }).map((tenths) => `${tenths / 10}°`))
const typedForm = fc.record({
  stations: fc.uniqueArray(fc.integer({ min: 0, max: 8000 }), { maxLength: 8 }).chain((places) => fc.tuple(...places.map((thousandths) =>
    fc.record({ at: fc.constant(`${thousandths / 1000}`), ...Object.fromEntries(STATION_BOXES.map((box) => [box, box === 'toeAngle' ? typedAngle : typedSize])) })))),
  indications: fc.array(fc.record({
    kind: fc.constantFrom(...INDICATION_KINDS), toe: fc.constantFrom(null, 'A', 'B'), at: fc.integer({ min: 0, max: 5400 }).map((thousandths) => `${thousandths / 1000}`),
    length: typedSize, depth: typedSize, diameter: typedSize, height: typedSize,
  }), { maxLength: 6 }),
  lookedFor: fc.subarray([...INDICATION_KINDS]),
  cratersFilled: fc.constantFrom(null, true, false),
  fusionComplete: fc.constantFrom(null, true, false),
})

describe('whatever passes', () => {
  it('reads back from storage as it was stored', () => {
    fc.assert(fc.property(typedForm, units, (form, of) => {
      const parsed = readingsSchema(frame({ units: of })).safeParse(form)
      fc.pre(parsed.success)
      expect(readStoredReadings(JSON.parse(JSON.stringify(parsed.data)))).toEqual(parsed.data)
      expect(parsed.data.typed).toEqual({ stations: form.stations, indications: form.indications })
    }), { numRuns: 60 })
  })

  it('can be judged by every criteria set, without an error and without a number that is none', () => {
    const sets = allCriteria()
    fc.assert(fc.property(typedForm, fc.constantFrom(...sets), fc.constantFrom('fillet' as const, 'groove' as const), (form, criteria, type) => {
      const parsed = readingsSchema(frame({ units: 'in' })).safeParse(form)
      fc.pre(parsed.success)
      const weld = {
        type, process: 'FCAW-S', position: type === 'fillet' ? '2F' : '3G', progression: null, thicknessMm: 9.525,
        electrodeDiameterMm: 1.143, nominalLegMm: type === 'fillet' ? 6.35 : null, lengthMm: 203.2,
      } as const
      return everyNumber(scoreInspection(weld, parsed.data.inspection, criteria)).every(Number.isFinite)
    }), { numRuns: 80 })
  }, 30_000)
})

describe('a stored document', () => {
  const stored = () => JSON.parse(JSON.stringify(readingsSchema(frame()).parse(oneStation({ width: '1/4' })))) as Record<string, unknown>

  it.each([
    ['of another version', { version: 2 }], ['of another unit', { units: 'cm' }], ['without what was typed', { typed: undefined }],
    ['with a size below zero', { inspection: { stations: [{ atMm: 1, widthMm: -1 }], indications: [], lookedFor: [], cratersFilled: null, fusionComplete: null } }],
    ['with null for a size', { inspection: { stations: [{ atMm: 1, widthMm: null }], indications: [], lookedFor: [], cratersFilled: null, fusionComplete: null } }],
  ])('%s is not read as if it were one of ours', (_what, change) => {
    expect(() => readStoredReadings({ ...stored(), ...change })).toThrow()
  })

  it('of ours is', () => {
    expect(readStoredReadings(stored()).inspection.stations[0]?.widthMm).toBeCloseTo(6.35, 9)
  })
})

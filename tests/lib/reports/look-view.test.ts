import { describe, expect, it } from 'vitest'
import { criteriaById } from '@/lib/criteria/catalogue'
import type { ExerciseFacts } from '@/lib/procedure/exercise'
import { lookView, stripOf, type LookInput } from '@/lib/reports/look-view'
import { scoreInspection } from '@/lib/scoring/score-inspection'
import { INDICATION_KINDS, type Inspection, type Station } from '@/lib/scoring/types'
import { weldOfExercise } from '@/lib/scoring/weld-of-exercise'

const exercise: ExerciseFacts = {
  title: '2F lap', process: 'FCAW-S', joint: 'lap', weldType: 'fillet', position: '2F', progression: null, plateThicknessMm: 9.525, material: 'A36',
  electrodeClass: 'E71T-11', electrodeDiameterMm: 1.143, nominalLegMm: 6.35, lengthMm: 203.2, passCount: 1, stationCount: 3, gauge: 'in32',
  boothCard: {
    polarity: 'DCEN', amps: null, volts: null, wireFeedMmPerS: null, contactTipToWorkMm: null, travelSpeedMmPerS: null, gas: null, gasFlowLPerMin: null,
    workAngleDeg: null, travelAngleDeg: null, travelDirection: null, sidePauseSeconds: null, note: null,
  },
  criteria: { id: 'shop-bead', version: 1 },
}
const stations: readonly Station[] = [
  { atMm: 34, widthMm: 6.2, legAMm: 6.8, legBMm: 6.9 }, { atMm: 102, widthMm: 6.3, legAMm: 5.1, legBMm: 6.6 }, { atMm: 169, widthMm: 6.4, legAMm: 6.6, legBMm: 6.6 },
]
function input(look: Partial<Inspection> = {}, change: Partial<ExerciseFacts> = {}, criteriaId = 'shop-bead'): LookInput {
  const facts = { ...exercise, ...change }
  const inspection: Inspection = { stations, indications: [], lookedFor: [...INDICATION_KINDS], cratersFilled: true, fusionComplete: true, ...look }
  const criteria = criteriaById(criteriaId)
  return { exercise: facts, inspection, scorecard: scoreInspection(weldOfExercise(facts), inspection, criteria), criteria, reader: { units: 'in', locale: 'en' } }
}

describe('the strip', () => {
  it('has the length and position of the exercise, and the readings as they are', () => {
    const strip = stripOf(input())
    expect(strip.weld).toEqual({ lengthMm: 203.2, position: '2F' })
    expect(strip.inspection.stations).toEqual(stations)
  })

  it('lies over the band of five to six electrode diameters', () => {
    const band = stripOf(input()).widthBand
    expect(band?.minMm).toBeCloseTo(5 * 1.143, 9)
    expect(band?.maxMm).toBeCloseTo(6 * 1.143, 9)
  })

  it('has no band where the criteria have none, or the electrode is not known', () => {
    expect(stripOf(input({}, {}, 'structural-static.us')).widthBand).toBeNull()
    expect(stripOf(input({}, { electrodeDiameterMm: null })).widthBand).toBeNull()
  })

  it('marks where a rule was broken, by name, and never past the ends of the weld', () => {
    const { rejected = [] } = stripOf(input({ indications: [{ kind: 'undercut', atMm: 0, lengthMm: 203.2, depthMm: 2 }, { kind: 'pore', atMm: 203.2, diameterMm: 3 }] }))
    expect(rejected.map(({ rule }) => rule)).toEqual(expect.arrayContaining(['Undercut', 'Porosity', 'Leg size']))
    for (const { fromMm, toMm } of rejected) {
      expect(fromMm).toBeGreaterThanOrEqual(0)
      expect(toMm).toBeLessThanOrEqual(203.2)
      expect(toMm).toBeGreaterThanOrEqual(fromMm)
    }
    expect(rejected.find(({ rule }) => rule === 'Undercut')).toMatchObject({ fromMm: 0, toMm: 203.2 })
  })

  it('marks nothing on a bead that passed', () => {
    expect(stripOf(input({ stations: stations.map((station) => ({ ...station, legAMm: 6.6, legBMm: 6.6 })) })).rejected).toEqual([])
  })
})

describe('the section', () => {
  it('is drawn at the station whose leg came closest to its limit, and says which', () => {
    const { section } = lookView(input())
    expect(section).toMatchObject({ station: stations[1], where: 'Station 2', joint: 'lap', position: '2F', thicknessMm: 9.525, nominalLegMm: 6.35 })
    const spanish = input()
    expect(lookView({ ...spanish, reader: { units: 'mm', locale: 'es' } }).section?.where).toBe('Estación 2')
  })

  it('falls back on the first station with both legs when that one cannot be drawn', () => {
    const half: readonly Station[] = [{ atMm: 34, widthMm: 6.2 }, { atMm: 102, legAMm: 5.1 }, { atMm: 169, legAMm: 6.6, legBMm: 6.6 }]
    expect(lookView(input({ stations: half })).section).toMatchObject({ station: half[2], where: 'Station 3' })
  })

  it('is not drawn without two legs of some size, nor for a groove', () => {
    expect(lookView(input({ stations: [{ atMm: 34, widthMm: 6.2 }] })).section).toBeNull()
    expect(lookView(input({ stations: [{ atMm: 34, legAMm: 0, legBMm: 6 }] })).section).toBeNull()
    expect(lookView(input({ stations: [] })).section).toBeNull()
    expect(lookView(input({}, { weldType: 'groove', position: '3G', joint: 'butt' }, 'structural-static.us')).section).toBeNull()
  })
})

it('says the scorecard in the reader’s words and units', () => {
  const { scorecard } = lookView(input())
  expect(scorecard.verdictWord).toBe('Reject')
  expect(scorecard.lines[0]).toMatchObject({ rule: 'leg-size', reading: '13/64 in', limit: 'at least 1/4 in' })
})

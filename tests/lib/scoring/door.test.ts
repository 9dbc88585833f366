import { describe, expect, it } from 'vitest'
import { criteriaById } from '@/lib/criteria/catalogue'
import { scoreInspection } from '@/lib/scoring/score-inspection'
import type { Indication, Inspection, Station, Weld } from '@/lib/scoring/types'
import { anInspection, aWeld } from './sound-weld'

const judging = (weld: Partial<Weld>, inspection: Partial<Inspection>) => () => scoreInspection(aWeld(weld), anInspection(inspection), criteriaById('shop-bead'))
const at = (station: Record<string, unknown>): Partial<Inspection> => ({ stations: [{ atMm: 5 }, station as unknown as Station] })
const seen = (indication: Record<string, unknown>): Partial<Inspection> => ({ indications: [indication as unknown as Indication] })

describe('refuses, in a sentence that says what to mend,', () => {
  it.each<[what: string, weld: Partial<Weld>, inspection: Partial<Inspection>, sentence: string]>([
    ['a station past the end', {}, at({ atMm: 301 }), 'Station 2 (at 301 mm) lies outside the weld, which is 300 mm long.'],
    ['a station before the start', {}, at({ atMm: -1 }), 'Station 2 (at -1 mm) lies outside the weld, which is 300 mm long.'],
    ['a station nowhere', {}, at({ atMm: NaN }), 'Station 2 has a place that is not a number: NaN.'],
    ['a station whose place is text', {}, at({ atMm: '5' }), 'Station 2 has a place that is not a number: 5.'],
    ['a negative width', {}, at({ atMm: 9, widthMm: -2 }), 'Station 2 (at 9 mm) has a negative width, -2. Leave out what was not measured.'],
    ['a leg that is not a number', {}, at({ atMm: 9, legBMm: NaN }), 'Station 2 (at 9 mm) has a leg B that is not a number, NaN. Leave out what was not measured.'],
    ['an endless throat', {}, at({ atMm: 9, throatMm: Infinity }), 'Station 2 (at 9 mm) has a throat that is not a number, Infinity.'],
    ['a convexity in text', {}, at({ atMm: 9, convexityMm: '1' }), 'has a convexity that is not a number, 1.'],
    ['a toe angle past a straight line', {}, at({ atMm: 9, toeAngleDeg: 180.1 }), 'Station 2 (at 9 mm) has a toe angle of 180.1, which is not a number of degrees from 0 to 180. Leave out what was not measured.'],
    ['a toe angle in text', {}, at({ atMm: 9, toeAngleDeg: '90' }), 'has a toe angle of 90, which is not a number of degrees'],
    ['a negative root width', {}, at({ atMm: 9, rootWidthMm: -1 }), 'Station 2 (at 9 mm) has a negative root width, -1.'],
    ['a shrinkage groove that is not a number', {}, at({ atMm: 9, shrinkageGrooveMm: NaN }), 'has a shrinkage groove that is not a number, NaN.'],
    ['a negative root shortfall', {}, at({ atMm: 9, rootShortfallMm: -1 }), 'has a negative root shortfall, -1.'],
    ['a negative root pore', {}, at({ atMm: 9, rootPoreMm: -1 }), 'has a negative root pore, -1.'],
    ['a negative root gap', {}, at({ atMm: 9, rootGapMm: -1 }), 'has a negative root gap, -1.'],
    ['an indication past the end', {}, seen({ kind: 'pore', atMm: 300.1 }), 'Indication 1 (pore at 300.1 mm) lies outside the weld, which is 300 mm long.'],
    ['an indication nowhere', {}, seen({ kind: 'pore' }), 'Indication 1 (pore) has a place that is not a number: undefined.'],
    ['a negative depth', {}, seen({ kind: 'undercut', atMm: 40, depthMm: -0.5 }), 'Indication 1 (undercut at 40 mm) has a negative depth, -0.5.'],
    ['a length that is not a number', {}, seen({ kind: 'undercut', atMm: 40, lengthMm: NaN }), 'has a length that is not a number, NaN.'],
    ['an unknown kind', {}, seen({ kind: 'wormhole', atMm: 40 }), 'Indication 1 has the kind "wormhole", which is not one of: crack,'],
    ['a kind that is a word of the language', {}, seen({ kind: 'constructor', atMm: 40 }), 'Indication 1 has the kind "constructor"'],
    ['an unknown toe', {}, seen({ kind: 'undercut', atMm: 40, toe: 'C' }), 'names the toe "C"; a weld has toe A and toe B.'],
    ['looking for an unknown kind', {}, { lookedFor: ['rust'] as unknown as Inspection['lookedFor'] }, 'The list of what was looked for has the kind "rust"'],
    ['an answer that is neither yes nor no', {}, { cratersFilled: 'yes' as unknown as boolean }, 'Whether the craters are filled is answered true, false or null (not looked at), not "yes".'],
    ['a gauge of negative step', {}, { gaugeResolutionMm: -1 }, 'The gauge\'s resolution must be a number of millimetres from 0 up, not -1.'],
    ['no list of stations', {}, { stations: null as unknown as Station[] }, 'An inspection has lists of stations, of indications and of what was looked for'],
    ['a weld of no length', { lengthMm: 0 }, {}, 'The weld\'s length must be a number of millimetres over 0, not 0'],
    ['a weld without a length', { lengthMm: null as unknown as number }, {}, 'The weld needs a length'],
    ['a plate of no thickness', { thicknessMm: 0 }, {}, 'The weld\'s plate thickness must be a number of millimetres over 0, not 0; leave it null when it is not known.'],
    ['a thickness that is not a number', { thicknessMm: NaN }, {}, 'plate thickness must be a number of millimetres over 0, not NaN'],
    ['a negative electrode', { electrodeDiameterMm: -1 }, {}, 'electrode diameter must be'],
    ['an endless leg', { nominalLegMm: Infinity }, {}, 'nominal leg must be'],
    ['an unknown weld', { type: 'plug' as unknown as 'fillet' }, {}, 'The weld\'s type is \'fillet\' or \'groove\', not "plug".'],
  ])('%s', (_, weld, inspection, sentence) => {
    expect(judging(weld, inspection)).toThrow(RangeError)
    expect(judging(weld, inspection)).toThrow(sentence)
  })
})

it('takes readings at both very ends, and one a rounding past the end', () => {
  expect(judging({ lengthMm: 0.1 + 0.2 }, { stations: [{ atMm: 0 }, { atMm: 0.3 }, { atMm: 0.3000000001 }] })).not.toThrow()
})

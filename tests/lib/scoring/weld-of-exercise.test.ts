// What an exercise says of its joint reaches the rules that turn on it. Limits: AWS D1.1, items 7(B) and 8(A) to 8(C) of the visual table, as the sets cite them.
import { describe, expect, it } from 'vitest'
import { criteriaById } from '@/lib/criteria/catalogue'
import type { ExerciseFacts } from '@/lib/procedure/exercise'
import { scoreInspection } from '@/lib/scoring/score-inspection'
import type { Indication } from '@/lib/scoring/types'
import { weldOfExercise } from '@/lib/scoring/weld-of-exercise'
import { anInspection, findingOf } from './sound-weld'

const exercise = (weldType: 'fillet' | 'groove', joint: Pick<ExerciseFacts, 'completePenetration' | 'transverseToTension' | 'stiffenerToWeb'>): ExerciseFacts => ({
  title: 'Made up', process: 'SMAW', joint: weldType === 'fillet' ? 'tee' : 'butt', weldType, position: weldType === 'fillet' ? '2F' : '2G', progression: null,
  plateThicknessMm: 12, material: 'A36', electrodeClass: 'E7018', electrodeDiameterMm: 3.2, nominalLegMm: weldType === 'fillet' ? 6 : null, lengthMm: 300,
  passCount: 1, stationCount: 5, gauge: 'mm', boothCard: {} as ExerciseFacts['boothCard'], criteria: { id: 'structural-cyclic.si', version: 1 }, ...joint,
})
type Set = 'structural-static.si' | 'structural-cyclic.si' | 'structural-cyclic.us'
const judged = (set: Set, facts: ExerciseFacts, rule: string, ...indications: Indication[]) =>
  findingOf(scoreInspection(weldOfExercise(facts), anInspection({ indications }), criteriaById(set)), rule)

const undercut = (depthMm: number): Indication => ({ kind: 'undercut', atMm: 100, lengthMm: 20, depthMm, toe: 'A' })
const pore = (atMm: number, diameterMm: number): Indication => ({ kind: 'pore', atMm, diameterMm })

it('passes on what is said of the joint, and leaves out what nobody said', () => {
  const said = { completePenetration: true, transverseToTension: false, stiffenerToWeb: true }
  expect(weldOfExercise(exercise('groove', said))).toMatchObject(said)
  const unsaid = weldOfExercise(exercise('groove', { completePenetration: null, stiffenerToWeb: null }))
  expect(Object.keys(unsaid)).toEqual(expect.not.arrayContaining(Object.keys(said)))
})

describe('undercut under cyclic load', () => {
  it.each([
    ['structural-cyclic.si', 0.25, 1], ['structural-cyclic.us', 0.254, 0.79375],
  ] as const)('%s: across the tension of a primary member %f mm, else %f mm', (set, inTension, otherwise) => {
    const across = exercise('fillet', { transverseToTension: true })
    expect(judged(set, across, 'undercut', undercut(inTension))).toMatchObject({ verdict: 'accept', limit: { max: expect.closeTo(inTension, 9) } })
    expect(judged(set, across, 'undercut', undercut(inTension + 0.05)).verdict).toBe('reject')
    for (const along of [{ transverseToTension: false }, { transverseToTension: null }, {}]) {
      expect(judged(set, exercise('fillet', along), 'undercut', undercut(inTension + 0.05))).toMatchObject({ verdict: 'accept', limit: { max: expect.closeTo(otherwise, 9) } })
    }
  })

  it('is one limit under static load, whichever way the joint lies', () => {
    for (const transverseToTension of [true, false]) {
      expect(judged('structural-static.si', exercise('fillet', { transverseToTension }), 'undercut', undercut(0.9)).verdict).toBe('accept')
    }
  })
})

describe('pores in a groove weld', () => {
  const one = pore(100, 1)
  it.each(['structural-static.si', 'structural-cyclic.si'] as const)('%s: none at all where the joint is through the plate and across the tension', (set) => {
    expect(judged(set, exercise('groove', { completePenetration: true, transverseToTension: true }), 'porosity-across-tension', one).verdict).toBe('reject')
    for (const joint of [{ completePenetration: true, transverseToTension: false }, { completePenetration: false, transverseToTension: true }, { transverseToTension: true }, {}]) {
      expect(judged(set, exercise('groove', joint), 'porosity-across-tension', one)).toMatchObject({ verdict: 'not-applicable', reason: 'other-service' })
    }
  })

  it('are counted by their spacing under cyclic load only elsewhere', () => {
    const two = [pore(100, 1), pore(150, 1)]
    expect(judged('structural-cyclic.si', exercise('groove', {}), 'porosity-frequency', ...two).verdict).toBe('reject')
    expect(judged('structural-cyclic.si', exercise('groove', { completePenetration: true, transverseToTension: true }), 'porosity-frequency', ...two).verdict).toBe('not-applicable')
  })
})

it('pores of a fillet under cyclic load: added up where it joins a stiffener to a web, else held to their spacing and size', () => {
  const pores = [pore(100, 3), pore(110, 3), pore(120, 3)]
  const stiffener = exercise('fillet', { stiffenerToWeb: true })
  expect(judged('structural-cyclic.si', stiffener, 'porosity-per-inch', ...pores)).toMatchObject({ verdict: 'accept', measured: 9 })
  expect(judged('structural-cyclic.si', stiffener, 'porosity-frequency', ...pores).verdict).toBe('not-applicable')
  const other = exercise('fillet', { stiffenerToWeb: null })
  expect(judged('structural-cyclic.si', other, 'porosity-per-inch', ...pores).verdict).toBe('not-applicable')
  expect(judged('structural-cyclic.si', other, 'porosity-frequency', ...pores).verdict).toBe('reject')
  expect(judged('structural-cyclic.si', other, 'porosity-diameter', ...pores).verdict).toBe('reject')
})

import type { ExerciseFacts } from '../procedure/exercise'
import type { Source } from '../source'
import { fromInches } from '../units/length'
import type { SetUpAnswers } from './set-up-answers'
import { BOOTH_CARD } from './setup-checks'

export type SetUpAnswerCheck = {
  readonly check: 'wire-size' | 'roll-size' | 'roll-groove-cored' | 'roll-groove-solid' | 'position-set'
  readonly values: Readonly<Record<string, string | number>>
  readonly source: Source
}

/** Sizes sold for a process, inches; from memory of what suppliers list. */
const WIRES_IN = [0.03, 0.035, 0.045, 0.052, 1 / 16, 0.068, 5 / 64, 3 / 32]
const RODS_IN = [3 / 32, 1 / 8, 5 / 32, 3 / 16]
/** 0.045 in and 1.2 mm, 0.035 in and 0.9 mm are one size to the trade; its next size is more than this away. */
const SAME_SIZE_MM = 0.08

const SHOP: Source = { title: 'Common shop practice', clause: null, status: 'common-practice', note: 'Makers of wire and of feeders differ: read their sheets.' }

/** Wire or rod sizes to choose from, mm; the exercise's own is always among them. */
export function consumableSizesMm({ process, electrodeDiameterMm }: Pick<ExerciseFacts, 'process' | 'electrodeDiameterMm'>): number[] {
  const sizes = (process === 'SMAW' ? RODS_IN : WIRES_IN).map((inches): number => fromInches(inches))
  const own = electrodeDiameterMm === null || sizes.some((each) => isSameSize(each, electrodeDiameterMm)) ? [] : [electrodeDiameterMm]
  return [...sizes, ...own].sort((a, b) => a - b)
}

/** Compares what the student found with what the exercise asks for. Answers not given are not checked. */
export function checkSetUpAnswers(answers: SetUpAnswers, facts: Pick<ExerciseFacts, 'process' | 'position' | 'electrodeDiameterMm'>): SetUpAnswerCheck[] {
  const { wireMm, rollMm, groove, position } = answers
  const wire = wireMm ?? facts.electrodeDiameterMm
  const cored = facts.process === 'FCAW-S' || facts.process === 'FCAW-G'
  return [
    ...(wireMm !== null && facts.electrodeDiameterMm !== null && !isSameSize(wireMm, facts.electrodeDiameterMm)
      ? [{ check: 'wire-size', values: { setMm: wireMm, rightMm: facts.electrodeDiameterMm }, source: BOOTH_CARD } as const] : []),
    ...(rollMm !== null && wire !== null && !isSameSize(rollMm, wire) ? [{ check: 'roll-size', values: { setMm: rollMm, rightMm: wire }, source: SHOP } as const] : []),
    ...(cored && (groove === 'v' || groove === 'u') ? [{ check: 'roll-groove-cored', values: {}, source: SHOP } as const] : []),
    ...(facts.process === 'GMAW' && groove === 'knurled' ? [{ check: 'roll-groove-solid', values: {}, source: SHOP } as const] : []),
    ...(position !== null && position !== facts.position ? [{ check: 'position-set', values: { set: position, right: facts.position }, source: BOOTH_CARD } as const] : []),
  ]
}

const isSameSize = (a: number, b: number): boolean => Math.abs(a - b) <= SAME_SIZE_MM

import type { CsvCell } from '../interchange/csv'
import type { PassRate, PassRates, RateGroup } from './pass-rates'

const HEADER = ['group', 'term', 'class', 'exercise', 'counted', 'passed', 'of', 'rate', 'low_95', 'high_95', 'incomplete', 'not_inspected', 'note']

const COUNTED = [
  ['coupons accepted by the instructor', ({ coupons }: RateGroup) => coupons],
  ['tests passed', ({ tests }: RateGroup) => tests],
  ['first tests passed', ({ firstTests }: RateGroup) => firstTests],
] as const

/**
 * The pass rates as rows for a file, header first: every group of the screen, three rows each. Rates and limits are shares from 0 to 1
 * with four decimals, empty where there are too few to compare.
 */
export function passRatesTable(rates: PassRates): (readonly CsvCell[])[] {
  const groups: [string, RateGroup][] = [
    ['all', rates.overall],
    ...rates.byTerm.map((each): [string, RateGroup] => ['term', each]),
    ...rates.byClass.flatMap((each): [string, RateGroup][] => [['class', each], ...each.exercises.map((one): [string, RateGroup] => ['class and exercise', one])]),
    ...rates.byExercise.map((each): [string, RateGroup] => ['exercise', each]),
  ]
  return [HEADER, ...groups.flatMap(([kind, group]) => COUNTED.map(([what, of], i) => row(kind, group, what, of(group), i === 0)))]
}

function row(kind: string, group: RateGroup, counted: string, { passed, n, share }: PassRate, ofCoupons: boolean): CsvCell[] {
  return [
    kind, group.term, group.className, group.exercise, counted, passed, n,
    share && decimals(share.rate), share && decimals(share.low), share && decimals(share.high),
    ofCoupons ? group.incomplete : null, ofCoupons ? group.uninspected : null,
    share ? null : n === 0 ? 'none yet' : 'too few to compare',
  ]
}

const decimals = (share: number): number => Math.round(share * 10_000) / 10_000

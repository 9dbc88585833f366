import type { Interval } from '../statistics/interval'
import { wilsonInterval } from '../statistics/proportion'

/** Groups smaller than this show their count and no rate. This project's choice: no source. */
export const LEAST_TO_COMPARE = 5
const CONFIDENCE = 0.95

export type CountedTerm = { readonly id: string; readonly name: string }
export type CountedClass = { readonly id: string; readonly name: string; readonly term: CountedTerm }
/** One cell of the count: an exercise in a class. */
type Place = { readonly classId: string; readonly exerciseId: string }
/** Coupons by the instructor's verdict; `uninspected` are those no instructor has looked at. */
export type CouponCount = Place & { readonly accepted: number; readonly rejected: number; readonly incomplete: number; readonly uninspected: number }
/** Test attempts, or only the first of each student in an exercise. */
export type TestCount = Place & { readonly passed: number; readonly attempts: number }

/** How many passed of how many judged. `share` is null where there are too few to say a rate. */
export type PassRate = {
  readonly passed: number
  readonly n: number
  /** 0 to 1, with its 95 % Wilson interval. */
  readonly share: (Interval & { readonly rate: number }) | null
}

/** The rates of one group. Names are null where the group holds several of them. */
export type RateGroup = {
  readonly key: string
  readonly term: string | null
  readonly className: string | null
  readonly exercise: string | null
  /** Accepted of accepted and rejected. */
  readonly coupons: PassRate
  readonly incomplete: number
  readonly uninspected: number
  readonly tests: PassRate
  readonly firstTests: PassRate
}

export type PassRates = {
  /** The term chosen; null is all of them. */
  readonly term: CountedTerm | null
  /** Latest first. */
  readonly terms: readonly CountedTerm[]
  readonly overall: RateGroup
  /** All terms, whichever is chosen, so that they can be set beside each other. */
  readonly byTerm: readonly RateGroup[]
  readonly byClass: readonly (RateGroup & { readonly exercises: readonly RateGroup[] })[]
  /** One group for each exercise and term. */
  readonly byExercise: readonly RateGroup[]
}

export type PassRateInput = {
  readonly coupons: readonly CouponCount[]
  readonly tests: readonly TestCount[]
  readonly firstTests: readonly TestCount[]
  /** Every class the counts name, those of the latest term first. */
  readonly classes: readonly CountedClass[]
  readonly exerciseTitles: ReadonlyMap<string, string>
}

/**
 * Pass rates by term, by class and by exercise: the one definition behind the screen and its CSV.
 *
 * @param termId the term to show; null shows all
 * @throws RangeError when a count is no count, or names a class or exercise that is not given
 */
export function passRates(input: PassRateInput, termId: string | null): PassRates {
  const terms = input.classes.map(({ term }) => term).filter((term, i, all) => all.findIndex(({ id }) => id === term.id) === i)
  const chosen = terms.find(({ id }) => id === termId) ?? null
  const classes = input.classes.filter(({ term }) => !chosen || term.id === chosen.id)
  const counts = (of: readonly CountedClass[], exerciseId?: string): Counts => countsIn(input, of, exerciseId)
  const names = { term: chosen?.name ?? null, className: null, exercise: null }

  return {
    term: chosen,
    terms,
    overall: group('all', names, counts(classes)),
    byTerm: terms.map((term) => group(term.id, { ...names, term: term.name }, counts(input.classes.filter((each) => each.term.id === term.id)))),
    byClass: classes.map((each) => {
      const own = { term: each.term.name, className: each.name, exercise: null }
      return {
        ...group(each.id, own, counts([each])),
        exercises: exercisesOf(input, [each]).map(([id, title]) => group(id, { ...own, exercise: title }, counts([each], id))),
      }
    }),
    byExercise: exercisesOf(input, classes).flatMap(([id, title]) =>
      terms.flatMap((term) => {
        const of = classes.filter((each) => each.term.id === term.id)
        const here = counts(of, id)
        return isEmpty(here) ? [] : [group(`${id} ${term.id}`, { term: term.name, className: null, exercise: title }, here)]
      })),
  }
}

type Counts = Pick<PassRateInput, 'coupons' | 'tests' | 'firstTests'>

function countsIn(input: Counts, classes: readonly CountedClass[], exerciseId?: string): Counts {
  const ids = new Set(classes.map(({ id }) => id))
  const here = (place: Place): boolean => ids.has(place.classId) && (exerciseId === undefined || place.exerciseId === exerciseId)
  return { coupons: input.coupons.filter(here), tests: input.tests.filter(here), firstTests: input.firstTests.filter(here) }
}

const isEmpty = ({ coupons, tests }: Counts): boolean => coupons.length + tests.length === 0

/** Exercises that were practised or tested in these classes, by title. */
function exercisesOf(input: PassRateInput, classes: readonly CountedClass[]): [id: string, title: string][] {
  const { coupons, tests } = countsIn(input, classes)
  const ids = new Set([...coupons, ...tests].map(({ exerciseId }) => exerciseId))
  return [...ids]
    .map((id): [string, string] => {
      const title = input.exerciseTitles.get(id)
      if (title === undefined) throw new RangeError(`The exercise ${id} was counted but has no title.`)
      return [id, title]
    })
    .sort(([, a], [, b]) => a.localeCompare(b, 'en', { numeric: true }))
}

function group(key: string, names: Pick<RateGroup, 'term' | 'className' | 'exercise'>, { coupons, tests, firstTests }: Counts): RateGroup {
  const sum = <T>(items: readonly T[], of: (item: T) => number): number => items.reduce((total, item) => total + of(item), 0)
  const accepted = sum(coupons, (each) => each.accepted)
  const ofTests = (counted: readonly TestCount[]): PassRate => passRate(sum(counted, (each) => each.passed), sum(counted, (each) => each.attempts))
  return {
    key,
    ...names,
    coupons: passRate(accepted, accepted + sum(coupons, (each) => each.rejected)),
    incomplete: sum(coupons, (each) => each.incomplete),
    uninspected: sum(coupons, (each) => each.uninspected),
    tests: ofTests(tests),
    firstTests: ofTests(firstTests),
  }
}

/**
 * A pass rate with its 95 % Wilson interval, or only its count where there are too few.
 *
 * @throws RangeError when a count is not whole, or more passed than were judged
 */
export function passRate(passed: number, n: number): PassRate {
  if (!Number.isInteger(passed) || !Number.isInteger(n) || passed < 0 || passed > n) throw new RangeError(`${passed} of ${n} is not a count of passes.`)
  if (n < LEAST_TO_COMPARE) return { passed, n, share: null }
  return { passed, n, share: { rate: passed / n, ...wilsonInterval(passed, n, CONFIDENCE) } }
}

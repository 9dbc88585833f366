import type { Source } from '../source'

/** One use of a process: any welding with it counts, whatever the base metal or code. */
export type ProcessUse = { readonly process: string; readonly on: Date }

export type ContinuityDue = {
  readonly lastUse: Date
  /** The last day the qualification holds without another use. */
  readonly dueBy: Date
  readonly lapsed: boolean
}

export const CONTINUITY_MONTHS = 6

export const CONTINUITY_SOURCE: Source = {
  title: 'AWS D1.1/D1.1M:2015',
  clause: '4.2.3.1',
  status: 'secondary',
  note: 'What counts as a use is confirmed by AWS interpretation D1.1-06-I08b: welding with the qualified process. The code says "more than six months"; that the sixth-month day itself still holds is our reading of it.',
}

/** Whether FCAW-S keeps FCAW-G alive is disputed between readers of the code, so they are kept apart here. */
export const CONFIRMATION_SOURCE: Source = { title: 'ISO 9606-1:2012', clause: '9.2', status: 'memory', note: 'Confirmed every six months by the coordinator or examiner.' }

/**
 * When a process must next be used to keep its qualification alive: six calendar months after the last use.
 *
 * A month that is too short ends on its last day: used on 31 August, due by 28 (or 29) February.
 * The code lapses a qualification after *more than* six months, so the due day itself is still good and the day after is not.
 * Days are counted in UTC, where a date without a time of day falls. Uses after `asOf` have not happened yet and are ignored.
 * It looks at the last use only; `firstGap` finds out whether the record broke earlier.
 *
 * @returns null when the process was never used up to `asOf`
 * @throws RangeError for a date that is not one
 */
export function continuityDue(uses: readonly ProcessUse[], process: string, asOf: Date): ContinuityDue | null {
  const today = dayOf(asOf)
  const lastUse = usesOf(uses, process, asOf).at(-1)
  if (lastUse === undefined) return null
  const dueBy = addMonths(lastUse, CONTINUITY_MONTHS)
  return { lastUse: new Date(lastUse), dueBy, lapsed: today > dayOf(dueBy) }
}

/**
 * The first stretch of more than six months without the process between a qualification and `asOf`. Welding again afterwards
 * does not mend it: the welder needs a new test.
 *
 * @returns null when the record never broke
 * @throws RangeError for a date that is not one
 */
export function firstGap(qualifiedOn: Date, uses: readonly ProcessUse[], process: string, asOf: Date): { from: Date; lapsedAfter: Date } | null {
  const start = dayOf(qualifiedOn)
  const kept = [qualifiedOn, ...usesOf(uses, process, asOf).filter(on => dayOf(on) > start), asOf]
  for (const [i, from] of kept.slice(0, -1).entries()) {
    const next = kept[i + 1]
    const lapsedAfter = addMonths(from, CONTINUITY_MONTHS)
    if (next !== undefined && dayOf(next) > dayOf(lapsedAfter)) return { from, lapsedAfter }
  }
  return null
}

const usesOf = (uses: readonly ProcessUse[], process: string, asOf: Date): Date[] =>
  uses
    .filter(use => dayOf(use.on) <= dayOf(asOf) && sameProcess(use.process, process))
    .map(use => use.on)
    .sort((a, b) => a.getTime() - b.getTime())

const sameProcess = (a: string, b: string): boolean => a.trim().toUpperCase() === b.trim().toUpperCase()

/** Days since the epoch, in UTC. */
function dayOf(date: Date): number {
  const time = date instanceof Date ? date.getTime() : Number.NaN
  if (Number.isNaN(time)) throw new RangeError('A date in the continuity record is not a date; enter it as year-month-day.')
  return Math.floor(time / 86_400_000)
}

function addMonths(date: Date, months: number): Date {
  const year = date.getUTCFullYear()
  const month = date.getUTCMonth() + months
  const lastDay = new Date(Date.UTC(year, month + 1, 0)).getUTCDate()
  return new Date(Date.UTC(year, month, Math.min(date.getUTCDate(), lastDay)))
}

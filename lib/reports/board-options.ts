import { PROCESSES, type Process } from '../procedure/process'
import type { QueueOrder } from './queue-order'

/** By booth, by family name, longest without a coupon first, or lowest chance in the one exercise that is shown. */
export const BOARD_SORTS = ['booth', 'name', 'last', 'chance'] as const
export type BoardSort = (typeof BOARD_SORTS)[number]

/** How an instructor has set the class page; all of it stands in the address, so that it can be kept, shared and works without scripts. */
export type BoardOptions = {
  readonly sort: BoardSort
  /** null shows all. */
  readonly process: Process | null
  readonly exercise: string | null
  readonly fromBooth: number | null
  readonly toBooth: number | null
  readonly queue: 'oldest' | 'booth'
  /** The booth a round starts from; null is the lowest. */
  readonly startBooth: number | null
  /** For a screen the class can see: nobody's name, only booths. */
  readonly projector: boolean
}

export const BOARD_DEFAULTS: BoardOptions = {
  sort: 'booth', process: null, exercise: null, fromBooth: null, toBooth: null, queue: 'oldest', startBooth: null, projector: false,
}

type Params = Readonly<Record<string, string | readonly string[] | undefined>>

/** The settings an address names. What it does not name, or names wrongly, is as if it were not there. */
export function readBoardOptions(params: Params): BoardOptions {
  const text = (key: string): string | null => {
    const value = params[key]
    const one = typeof value === 'string' ? value : value?.[0]
    return one === undefined || one === '' ? null : one
  }
  const booth = (key: string): number | null => {
    const value = text(key)
    return value !== null && /^\d{1,4}$/.test(value) ? Number(value) : null
  }
  const exercise = text('exercise')
  const projector = text('show') === 'projector'
  const sort = BOARD_SORTS.find((each) => each === text('sort')) ?? 'booth'
  return {
    // Neither by name where none is shown, nor the class in the order of its chances before its eyes.
    sort: (sort === 'chance' && exercise === null) || (projector && sort !== 'booth') ? 'booth' : sort,
    process: PROCESSES.find((each) => each === text('process')) ?? null,
    exercise,
    fromBooth: booth('from'), toBooth: booth('to'),
    queue: text('queue') === 'booth' ? 'booth' : 'oldest',
    startBooth: booth('start'),
    projector,
  }
}

/** The settings as the fields of an address, without those that are as they are by themselves. */
export function boardFields(options: BoardOptions): readonly (readonly [name: string, value: string])[] {
  const fields: readonly (readonly [string, string | number | null])[] = [
    ['sort', options.sort === 'booth' ? null : options.sort], ['process', options.process], ['exercise', options.exercise],
    ['from', options.fromBooth], ['to', options.toBooth], ['queue', options.queue === 'booth' ? 'booth' : null], ['start', options.startBooth],
    ['show', options.projector ? 'projector' : null],
  ]
  return fields.flatMap(([name, value]) => (value === null ? [] : [[name, String(value)] as const]))
}

/** The address of the page with some settings changed. */
export function boardAddress(path: string, options: BoardOptions, change: Partial<BoardOptions> = {}): string {
  const query = new URLSearchParams(boardFields({ ...options, ...change }).map(([name, value]) => [name, value])).toString()
  return query === '' ? path : `${path}?${query}`
}

export const orderOf = ({ queue, startBooth }: BoardOptions): QueueOrder => (queue === 'oldest' ? { by: 'oldest' } : { by: 'booth', from: startBooth ?? 0 })

/** Whether a booth is among those shown; a student without one is shown while no booths are asked for. */
export function boothShown(booth: number | null, { fromBooth, toBooth }: BoardOptions): boolean {
  if (fromBooth === null && toBooth === null) return true
  return booth !== null && booth >= (fromBooth ?? 0) && booth <= (toBooth ?? Infinity)
}

export type SortableRow = { readonly booth: number | null; readonly familyName: string; readonly givenName: string; readonly lastCoupon: Date | null; readonly chance: number | null }

/** The rows of a board in the order asked for. Without a booth, or without a chance, comes last; who never logged a coupon is longest without one. */
export function sortBoard<T extends SortableRow>(rows: readonly T[], sort: BoardSort): T[] {
  const byName = (a: T, b: T): number => a.familyName.localeCompare(b.familyName, 'en') || a.givenName.localeCompare(b.givenName, 'en')
  const byBooth = (a: T, b: T): number => ascending(a.booth, b.booth) || byName(a, b)
  const compare: Readonly<Record<BoardSort, (a: T, b: T) => number>> = {
    booth: byBooth,
    name: byName,
    last: (a, b) => (a.lastCoupon?.getTime() ?? 0) - (b.lastCoupon?.getTime() ?? 0) || byBooth(a, b),
    chance: (a, b) => ascending(a.chance, b.chance) || byBooth(a, b),
  }
  return [...rows].sort(compare[sort])
}

function ascending(a: number | null, b: number | null): number {
  if (a === null || b === null) return Number(a === null) - Number(b === null)
  return a - b
}

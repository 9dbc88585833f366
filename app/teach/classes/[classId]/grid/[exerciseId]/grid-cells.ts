import { sizeCell, type CellProblems, type GridFrame, type GridRow } from '@/lib/schemas/grid-row'
import type { GridCoupon, GridGroup } from '@/app/_server/views/grading-grid'

/** A coupon's typed row with what is needed to name it when it no longer waits. */
export type KeptRow = { readonly label: string; readonly row: GridRow }
/** Everything typed, by coupon. */
export type KeptRows = Readonly<Record<string, KeptRow>>

/** How far a row has come. */
export type RowState =
  | { readonly kind: 'open'; readonly problems: CellProblems; readonly message: string | null }
  | { readonly kind: 'sending' }
  | { readonly kind: 'graded'; readonly verdict: 'accept' | 'reject' | 'incomplete'; readonly mark: number | null }

export const OPEN: RowState = { kind: 'open', problems: {}, message: null }

/** A row of the grid: a coupon that waits, or one that was graded since the page was opened. `gone`: it waits no more, and not because of this page. */
export type ShownCoupon = GridCoupon & { readonly gone: boolean }

export const couponLabel = ({ name, number }: Pick<GridCoupon, 'name' | 'number'>): string => `${name}, no.\u00a0${number}`

/** The cells after the sizes, in their order. */
export const ENDING = ['looked', 'craters', 'fusion', 'seen', 'remark', 'grade'] as const

/** A row's cells from left to right. */
export function cellsOf({ places, boxes }: GridFrame): string[] {
  return [...places.flatMap((_, station) => boxes.map((box) => sizeCell(station, box))), ...ENDING]
}

/** What stands in a typed cell. */
export function textOf(row: GridRow, cell: string): string {
  if (cell === 'craters' || cell === 'fusion' || cell === 'seen' || cell === 'remark') return row[cell]
  return row.sizes[cell] ?? ''
}

/** The row with a cell typed anew. */
export function withText(row: GridRow, cell: string, text: string): GridRow {
  if (cell === 'craters' || cell === 'fusion' || cell === 'seen' || cell === 'remark') return { ...row, [cell]: text }
  return { ...row, sizes: { ...row.sizes, [cell]: text } }
}

/** Everything was looked for: answers that were not given become yes, those that were stay. */
export const lookedForAll = (row: GridRow): GridRow => ({ ...row, looked: true, craters: row.craters.trim() || 'y', fusion: row.fusion.trim() || 'y' })

/** The cell's name, heard beside the row's. */
export function cellName(cell: string, frame: GridFrame, heads: readonly string[]): string {
  const [station, box] = cell.split('.')
  if (box === undefined) return NAMES[cell] ?? cell
  return `Station ${Number(station) + 1}, ${heads[frame.boxes.findIndex((each) => each === box)] ?? box}`
}

export const NAMES: Readonly<Record<string, string>> = {
  looked: 'Looked for everything', craters: 'Craters filled', fusion: 'Fusion complete', seen: 'Seen', remark: 'Remark to the student', grade: 'Grade',
}

/**
 * The rows after the page was read anew: those there stay in their order, new ones follow. One that waits no more stays while it was graded
 * here or something is typed in it.
 */
export function mergeRows(shown: readonly ShownCoupon[], waiting: readonly GridCoupon[], stays: (id: string) => boolean): ShownCoupon[] {
  const fresh = new Map(waiting.map((coupon) => [coupon.id, coupon]))
  const kept = shown.flatMap((coupon): ShownCoupon[] => {
    const now = fresh.get(coupon.id)
    if (now) return [{ ...now, gone: false }]
    return stays(coupon.id) ? [{ ...coupon, gone: true }] : []
  })
  const known = new Set(shown.map(({ id }) => id))
  return [...kept, ...waiting.filter(({ id }) => !known.has(id)).map((coupon) => ({ ...coupon, gone: false }))]
}

/** A group with its rows as they are shown. */
export type ShownGroup = Omit<GridGroup, 'coupons'> & { readonly coupons: readonly ShownCoupon[] }

/** The same for whole groups: one whose coupons all left stays while any of its rows does. */
export function mergeGroups(shown: readonly ShownGroup[], fresh: readonly GridGroup[], stays: (id: string) => boolean): ShownGroup[] {
  const before = new Map(shown.map((group) => [group.version, group]))
  const now = new Map(fresh.map((group) => [group.version, group]))
  return [...new Set([...before.keys(), ...now.keys()])].sort((a, b) => b - a).flatMap((version): ShownGroup[] => {
    const group = now.get(version) ?? before.get(version)
    if (!group) return []
    const coupons = mergeRows(before.get(version)?.coupons ?? [], now.get(version)?.coupons ?? [], stays)
    return coupons.length > 0 ? [{ ...group, coupons }] : []
  })
}

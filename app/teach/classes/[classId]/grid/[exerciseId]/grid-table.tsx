import { BLANK_ROW } from '@/lib/schemas/grid-row'
import { NAMES, OPEN, type KeptRows, type RowState, type ShownGroup } from './grid-cells'
import { GridLine } from './grid-line'

type Props = {
  readonly group: ShownGroup
  readonly caption: string
  readonly rows: KeptRows
  readonly states: Readonly<Record<string, RowState>>
  /** The one cell in the page's tab order. */
  readonly entry: { readonly coupon: string; readonly cell: string } | null
}

const headLook = 'px-1 py-1 text-left align-bottom font-head text-base leading-tight font-semibold'

/** One version's coupons as a grid that scrolls sideways under its row heads. */
export function GridTable({ group, caption, rows, states, entry }: Props) {
  return (
    <div className="w-full scroll-pl-44 overflow-x-auto [contain:inline-size] max-sm:scroll-pl-32">
      <table role="grid" aria-label={caption} className="border-collapse">
        <thead>
          <tr>
            <th rowSpan={2} scope="col" className={`sticky left-0 z-10 bg-paper pl-0! ${headLook}`}>Coupon</th>
            {group.places.map((at, station) => <th key={at} colSpan={group.boxes.length} scope="colgroup" className={`border-l border-line pl-2! ${headLook}`}>Station {station + 1}<span className="block font-text text-base font-normal">{at}</span></th>)}
            {(['looked', 'craters', 'fusion', 'seen', 'remark', 'grade'] as const).map((cell) => <th key={cell} rowSpan={2} scope="col" className={cell === 'looked' ? `border-l border-line pl-2! ${headLook}` : headLook}>{NAMES[cell]}</th>)}
          </tr>
          <tr className="border-b-2 border-ink">
            {group.places.map((at) => group.heads.map((head, index) => <th key={`${at} ${head}`} scope="col" className={index === 0 ? `border-l border-line pl-2! ${headLook}` : headLook}>{head}</th>))}
          </tr>
        </thead>
        <tbody>
          {group.coupons.map((coupon) => (
            <GridLine
              key={coupon.id} coupon={coupon} frame={group} heads={group.heads} row={rows[coupon.id]?.row ?? BLANK_ROW} state={states[coupon.id] ?? OPEN}
              active={entry?.coupon === coupon.id ? entry.cell : null}
            />
          ))}
        </tbody>
      </table>
    </div>
  )
}

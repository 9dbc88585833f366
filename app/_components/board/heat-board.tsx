import Link from 'next/link'
import { HeatCell } from '../ui/heat-cell'
import { TableRegion } from '../ui/table-region'

type Cell = { readonly standing: { readonly probability: number | null; readonly text: string; readonly spoken: string }; readonly waiting: number }
type Row = { readonly key: string; readonly booth: number | null; readonly name: string; readonly lastCoupon: string | null; readonly href: string | null; readonly cells: readonly Cell[] }
type Props = {
  readonly caption: string
  readonly columns: readonly { readonly id: string; readonly title: string; readonly notes: readonly string[] }[]
  readonly rows: readonly Row[]
  /** On a projector rows go by their booth, and nothing leads to a student. */
  readonly projector?: boolean
}

/** Students by exercises, shaded by the chance of passing, with the figure on each plate and a ring where a coupon waits. */
export function HeatBoard({ caption, columns, rows, projector = false }: Props) {
  return (
    <TableRegion label={caption}>
      <table className="border-separate border-spacing-1 text-left">
        <caption className="sr-only">{caption}</caption>
        <thead>
          <tr>
            {!projector && <th scope="col" className="px-1 align-bottom font-head text-base font-semibold">Booth</th>}
            <th scope="col" className="sticky left-0 z-10 bg-paper px-1 align-bottom font-head text-base font-semibold"><span className="block">{projector ? 'Booth' : 'Student'}</span><span className="block font-text text-sm font-normal text-ink-2">last coupon</span></th>
            {columns.map((column) => (
              <th key={column.id} scope="col" className="max-w-24 min-w-16 px-1 align-bottom font-head text-lg leading-tight font-semibold">
                {column.title}{column.notes.map((note) => <span key={note} className="block font-text text-sm font-normal whitespace-nowrap text-ink-2">{note}</span>)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.key}>
              {!projector && <td className="figures px-1 text-right text-lg">{row.booth ?? '–'}</td>}
              <th scope="row" className="sticky left-0 z-10 min-w-36 bg-paper px-1 leading-tight"><RowHead row={row} /></th>
              {row.cells.map((cell, index) => (
                <td key={columns[index]?.id ?? index}>
                  <HeatCell {...cell.standing} spoken={cell.waiting > 0 ? `${cell.standing.spoken}, ${cell.waiting} waiting` : cell.standing.spoken} waiting={cell.waiting > 0} />
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </TableRegion>
  )
}

function RowHead({ row: { href, name, lastCoupon } }: { readonly row: Row }) {
  const last = lastCoupon && <span className="text-sm font-normal text-ink-2 sm:whitespace-nowrap"><span className="sr-only">, last coupon </span>{lastCoupon}</span>
  if (href === null) return <span className="flex min-h-12 flex-col justify-center font-bold"><span>{name}</span>{last}</span>
  return <Link href={href} className="ring-inside flex min-h-12 flex-col justify-center font-bold no-underline"><span className="underline underline-offset-4">{name}</span>{last}</Link>
}

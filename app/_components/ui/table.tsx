import type { ReactNode } from 'react'
import { TableRegion } from './table-region'

export type Column = {
  readonly key: string
  readonly head: ReactNode
  /** Figures line up at the right. */
  readonly numeric?: boolean
}
export type Row = { readonly key: string; readonly cells: readonly ReactNode[] }

type TableProps = {
  /** What the table shows; also names its scrolling region. */
  readonly caption: string
  readonly captionHidden?: boolean
  readonly columns: readonly Column[]
  readonly rows: readonly Row[]
  /** The first cell of a row names it (th scope="row"). */
  readonly rowHeads?: boolean
}

/** A plain table, with headers that say what they head, in a region that scrolls sideways when the screen is too narrow. */
export function Table({ caption, captionHidden = false, columns, rows, rowHeads = true }: TableProps) {
  return (
    <TableRegion label={caption}>
      <table className="w-full border-collapse text-left">
        <caption className={captionHidden ? 'sr-only' : 'pb-2 text-left font-head text-xl font-semibold'}>{caption}</caption>
        <thead>
          <tr className="border-b-2 border-ink">
            {columns.map((column) => (
              <th key={column.key} scope="col" className={`px-2 py-2 align-bottom font-head text-lg leading-tight font-semibold first:pl-0 last:pr-0 ${align(column)}`}>
                {column.head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.key} className="border-b border-line">
              {columns.map((column, index) =>
                index === 0 && rowHeads ? (
                  <th key={column.key} scope="row" className={`min-w-36 py-2.5 pr-2 font-bold ${align(column)}`}>
                    {row.cells[index]}
                  </th>
                ) : (
                  <td key={column.key} className={`px-2 py-2.5 first:pl-0 last:pr-0 ${align(column)}`}>
                    {row.cells[index]}
                  </td>
                ),
              )}
            </tr>
          ))}
        </tbody>
      </table>
    </TableRegion>
  )
}

const align = (column: Column): string => (column.numeric ? 'text-right whitespace-nowrap' : '')

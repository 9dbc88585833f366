import type { ReactNode } from 'react'
import { TableRegion } from '@/app/_components/ui/table-region'

export type PaperColumn = { readonly key: string; readonly head: ReactNode; readonly numeric?: boolean; readonly oneLine?: boolean; readonly wide?: boolean }

type PaperTableProps = {
  readonly caption: string
  readonly captionHidden?: boolean
  /** Too wide for a phone: there it scrolls. */
  readonly broad?: boolean
  readonly columns: readonly PaperColumn[]
  readonly rows: readonly { readonly key: string; readonly strong?: boolean; readonly cells: readonly ReactNode[] }[]
}

/** A table as dense as paper allows; its head comes again on the next sheet. */
export function PaperTable({ caption, captionHidden = false, broad = false, columns, rows }: PaperTableProps) {
  const table = (
    <table className={`w-full border-collapse text-left text-base leading-tight print:min-w-0 print:text-[9.5pt] ${broad ? 'min-w-2xl' : ''}`}>
      <caption className={captionHidden ? 'sr-only' : 'pb-1 text-left font-head text-xl leading-tight font-semibold'}>{caption}</caption>
      <thead>
        <tr className="border-b-[1.5px] border-ink align-bottom">
          {columns.map((column) => (
            <th key={column.key} scope="col" className={`py-1 pr-3 font-head leading-tight font-semibold last:pr-0 print:pt-0 print:pb-[0.6mm] ${column.numeric ? 'text-right' : ''} ${column.wide ? 'w-[46%]' : ''}`}>{column.head}</th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <tr key={row.key} className={`border-b border-line ${row.strong ? 'font-bold' : ''}`}>
            {columns.map((column, i) => {
              const look = `py-1 pr-3 last:pr-0 print:py-[0.6mm] ${column.numeric ? 'text-right' : ''} ${column.numeric || column.oneLine ? 'whitespace-nowrap' : ''}`
              return i === 0
                ? <th key={column.key} scope="row" className={`${look} ${row.strong ? 'font-bold' : 'font-normal'}`}>{row.cells[i]}</th>
                : <td key={column.key} className={look}>{row.cells[i]}</td>
            })}
          </tr>
        ))}
      </tbody>
    </table>
  )
  return broad ? <TableRegion label={caption}>{table}</TableRegion> : table
}

import type { ReactNode } from 'react'
import { Table, type Column, type Row } from '../ui/table'

type ChartFigureProps = {
  readonly title: string
  readonly titleHidden: boolean
  /** The chart in a sentence. */
  readonly summary: string
  readonly drawing: ReactNode | Pair
  /** The same figures as a table, folded away; not on paper. */
  readonly table: { readonly open: string; readonly columns: readonly Column[]; readonly rows: readonly Row[] }
}

/** A chart with its title, its sentence, its drawing (one, or one for narrow and one for wide places) and its table twin. */
export function ChartFigure({ title, titleHidden, summary, drawing, table }: ChartFigureProps) {
  return (
    <figure className="@container">
      <figcaption>
        <span className={titleHidden ? 'sr-only' : 'block font-head text-xl leading-tight font-semibold'}>{title}</span>
        <span className="block">{summary}</span>
      </figcaption>
      {isPair(drawing) ? (
        <>
          <div className="mt-2 @lg:hidden">{drawing.narrow}</div>
          <div className="mt-2 hidden max-w-4xl @lg:block">{drawing.wide}</div>
        </>
      ) : (
        <div className="mt-2 max-w-4xl">{drawing}</div>
      )}
      <details className="mt-1 print:hidden">
        <summary className="ring-inside flex min-h-12 w-fit items-center underline underline-offset-4">{table.open}</summary>
        <Table caption={title} captionHidden columns={table.columns} rows={table.rows} />
      </details>
    </figure>
  )
}

type Pair = { readonly narrow: ReactNode; readonly wide: ReactNode }

function isPair(drawing: ReactNode | Pair): drawing is Pair {
  return typeof drawing === 'object' && drawing !== null && 'narrow' in drawing
}

import type { ReactNode } from 'react'

type FigureRowsProps = {
  readonly title: string
  /** How the drawing is to be read. */
  readonly words: string
  /** Over the drawings: 'Rule', and what the figures are. */
  readonly heads: readonly [string, string]
  /** The ends and the middle of the drawings' scale. */
  readonly scale: readonly string[]
  readonly rows: readonly { readonly key: string; readonly label: ReactNode; readonly drawing: ReactNode; readonly figures: ReactNode }[]
}

const COLUMNS = 'grid gap-x-4 sm:grid-cols-[minmax(8rem,3fr)_4fr_minmax(16rem,5fr)]'

/** Rows of a name, a drawing on one scale and its figures: side by side where there is room, one below the other on a phone. */
export function FigureRows({ title, words, heads: [name, figures], scale, rows }: FigureRowsProps) {
  return (
    <figure>
      <figcaption className="pb-2">
        <span className="block font-head text-xl leading-tight font-semibold">{title}</span>
        <span className="block text-base text-ink-2">{words}</span>
      </figcaption>
      <div aria-hidden="true" className={`${COLUMNS} items-end border-b-2 border-ink pb-2`}>
        <span className="hidden font-head text-lg leading-tight font-semibold sm:block">{name}</span>
        <span className="flex justify-between text-base text-ink-2">{scale.map((each) => <span key={each}>{each}</span>)}</span>
        <span className="hidden font-head text-lg leading-tight font-semibold sm:block">{figures}</span>
      </div>
      <ul aria-label={title}>
        {rows.map((row) => (
          <li key={row.key} className={`${COLUMNS} items-center border-b border-line py-2`}>
            <p className="leading-tight font-bold">{row.label}</p>
            <div className="py-1">{row.drawing}</div>
            <div className="leading-tight">{row.figures}</div>
          </li>
        ))}
      </ul>
    </figure>
  )
}

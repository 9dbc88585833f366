import type { CardRow } from '@/lib/reports/booth-card-view'

type CardRowsProps = { readonly title: string; readonly rows: readonly CardRow[]; readonly large?: boolean }

/** Rows of the card; `large` for what is read with a helmet on. */
export function CardRows({ title, rows, large = false }: CardRowsProps) {
  return (
    <section>
      <h2 className="pb-1 text-xl leading-tight">{title}</h2>
      <dl className="divide-y divide-line border-y border-line">
        {rows.map((row) => (
          <div key={row.key} className="flex items-baseline justify-between gap-4 py-1 leading-tight print:py-[0.3mm]">
            <dt>{row.term}</dt>
            <dd className={large ? 'figures text-right text-2xl leading-tight print:text-[14pt]' : 'text-right font-bold'}>{row.value}</dd>
          </div>
        ))}
      </dl>
    </section>
  )
}

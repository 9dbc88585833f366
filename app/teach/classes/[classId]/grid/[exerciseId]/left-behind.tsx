import { buttonLook } from '@/app/_components/ui/button-look'
import { NAMES, type KeptRow } from './grid-cells'

type Props = { readonly rows: readonly (readonly [id: string, kept: KeptRow])[]; readonly nameOf: (cell: string) => string }

/** What was typed on an earlier visit for coupons that are no longer in the list: shown, not lost. */
export function LeftBehind({ rows, nameOf }: Props) {
  if (rows.length === 0) return null
  return (
    <section className="grid gap-2">
      <h2 className="text-2xl">Typed here earlier, no longer waiting</h2>
      <ul className="divide-y divide-line border-y border-line">
        {rows.map(([id, { label, row }]) => {
          const typed = [...Object.entries(row.sizes), ...(['craters', 'fusion', 'seen', 'remark'] as const).map((cell) => [cell, row[cell]] as const)].filter(([, text]) => text.trim() !== '')
          return (
            <li key={id} className="py-2">
              <p className="font-bold">{label}</p>
              <p>{[...typed.map(([cell, text]) => `${nameOf(cell)}: ${text}`), ...(row.looked ? [NAMES['looked']] : [])].join('; ') || 'Nothing typed.'}</p>
              <p className="flex flex-wrap items-center gap-x-4">
                <a href={`/teach/coupons/${id}`} className="inline-flex min-h-12 items-center">See the inspection that stands<span className="sr-only">: {label}</span></a>
                <button type="button" data-discard={id} className={buttonLook('quiet', 'shop', false)}>Discard<span className="sr-only">: {label}</span></button>
              </p>
            </li>
          )
        })}
      </ul>
    </section>
  )
}

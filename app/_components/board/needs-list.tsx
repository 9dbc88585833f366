import Link from 'next/link'

export type NeedsListRow = { readonly studentId: string; readonly name: string; readonly booth: number | null; readonly reasons: readonly string[] }

/** So many are a list to act on; the others wait behind it. */
const SHOWN = 6

/** Who needs the instructor today, most urgent first, each with the reasons in words. */
export function NeedsList({ rows }: { readonly rows: readonly NeedsListRow[] }) {
  const rest = rows.slice(SHOWN)
  return (
    <section aria-labelledby="needs-you" className="grid content-start gap-3">
      <h2 id="needs-you" className="text-2xl">Needs you today</h2>
      {rows.length === 0 ? <p className="text-ink-2">Nobody in particular: no repeated defects, no gaps, nobody asked.</p> : <Rows rows={rows.slice(0, SHOWN)} />}
      {rest.length > 0 && (
        <details>
          <summary className="flex min-h-12 cursor-pointer items-center underline underline-offset-4">{rest.length} more</summary>
          <Rows rows={rest} />
        </details>
      )}
    </section>
  )
}

function Rows({ rows }: { readonly rows: readonly NeedsListRow[] }) {
  return (
    <ol className="grid gap-x-8 border-t border-line md:grid-cols-2 2xl:grid-cols-3">
      {rows.map((row) => (
        <li key={row.studentId} className="flex gap-3 border-b border-line py-2">
          <span className="figures w-8 shrink-0 pt-2.5 text-2xl leading-none"><span className="sr-only">Booth </span>{row.booth ?? '–'}</span>
          <div className="min-w-0">
            <Link href={`/teach/students/${row.studentId}`} className="flex min-h-12 items-center font-bold">{row.name}</Link>
            <ul className="grid gap-1 pb-1">
              {row.reasons.map((reason, index) => <li key={reason} className={index === 0 ? 'leading-snug' : 'text-base leading-snug text-ink-2'}>{reason}</li>)}
            </ul>
          </div>
        </li>
      ))}
    </ol>
  )
}

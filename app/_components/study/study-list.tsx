import Link from 'next/link'

type Row = { readonly key: string; readonly href: string; readonly name: string; readonly where: string; readonly facts: string; readonly state: string }

/** Gauge studies under a heading, each with how far it is. */
export function StudyList({ id, title, rows }: { readonly id: string; readonly title: string; readonly rows: readonly Row[] }) {
  if (rows.length === 0) return null
  return (
    <section aria-labelledby={id} className="grid gap-3">
      <h2 id={id} className="text-2xl">{title}</h2>
      <ul className="divide-y divide-line border-y border-line">
        {rows.map((row) => (
          <li key={row.key} className="grid gap-x-6 py-2 sm:grid-cols-[1fr_auto] sm:items-center">
            <div className="min-w-0">
              <h3 className="text-xl"><Link href={row.href} className="inline-flex min-h-12 items-center">{row.name}</Link></h3>
              <p className="text-ink-2">{row.where} · {row.facts}</p>
            </div>
            <p>{row.state}</p>
          </li>
        ))}
      </ul>
    </section>
  )
}

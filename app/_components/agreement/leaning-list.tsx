import Link from 'next/link'
import { LEANING_USE } from '@/lib/reports/agreement-words'

type Coupon = { readonly id: string; readonly label: string; readonly href: string | null }
type Line = { readonly key: string; readonly text: string; readonly coupons: readonly Coupon[]; readonly more: number }
type LeaningListProps = { readonly title: string; readonly lines: readonly Line[]; readonly caution: string | null; readonly none: string; readonly use?: string }

/** Who parts from others one way, each with coupons to put on the table; or that nobody does. */
export function LeaningList({ title, lines, caution, none, use = LEANING_USE }: LeaningListProps) {
  return (
    <section className="grid gap-3">
      <h2 className="text-2xl">{title}</h2>
      {lines.length === 0 ? <p>{none}</p> : (
        <ul className="divide-y divide-line border-y border-line">
          {lines.map(({ key, text, coupons, more }) => (
            <li key={key} className="grid gap-1 py-3">
              <p className="max-w-prose text-lg">{text}</p>
              <ul aria-label="The newest of these coupons" className="flex flex-wrap gap-x-6">
                {coupons.map(({ id, label, href }) => (
                  <li key={id}>{href === null ? <span className="inline-flex min-h-12 items-center">{label}</span> : <Link href={href} className="inline-flex min-h-12 items-center underline underline-offset-4">{label}</Link>}</li>
                ))}
                {more > 0 && <li className="inline-flex min-h-12 items-center text-ink-2">and {more} more</li>}
              </ul>
            </li>
          ))}
        </ul>
      )}
      <div className="grid max-w-prose gap-1 text-base text-ink-2">
        {lines.length > 0 && <p>{use}</p>}
        {caution && <p>{caution}</p>}
      </div>
    </section>
  )
}

import Link from 'next/link'
import type { ReactNode } from 'react'

type Line = { readonly key: string; readonly booth: number | null; readonly who: string; readonly what: string; readonly since: string }
export type QueueListRow =
  | ({ readonly kind: 'coupon'; readonly href: string | null; readonly taken: string | null } & Line)
  | ({ readonly kind: 'look'; readonly lookId: string; readonly note: string | null } & Line)

type QueueListProps = {
  readonly rows: readonly QueueListRow[]
  /** What is pressed once the instructor has been at the booth; left out where nothing may be pressed. */
  readonly beenThere?: (lookId: string, who: string) => ReactNode
}

/** What waits, in the order it is taken: coupons to look at, and students who asked for the instructor. */
export function QueueList({ rows, beenThere }: QueueListProps) {
  return (
    <ol className="grid gap-x-8 border-t border-line md:grid-cols-2 xl:grid-cols-1">
      {rows.map((row) => (
        <li key={row.key} className="min-w-0 border-b border-line">
          {row.kind === 'coupon' && row.href !== null ? (
            <Link href={row.href} className="ring-inside flex min-h-12 items-center gap-3 py-2 no-underline hover:bg-plate"><LineBody row={row} linked /></Link>
          ) : (
            <div className="flex min-h-12 items-center gap-3 py-2"><LineBody row={row} linked={false} />{row.kind === 'look' && <div className="ml-auto shrink-0">{beenThere?.(row.lookId, row.who)}</div>}</div>
          )}
        </li>
      ))}
    </ol>
  )
}

function LineBody({ row, linked }: { readonly row: QueueListRow; readonly linked: boolean }) {
  return (
    <>
      <span className="figures w-8 shrink-0 text-2xl leading-none"><span className="sr-only">Booth </span>{row.booth ?? '–'}</span>
      <span className="min-w-0">
        <span className={linked ? 'font-bold underline underline-offset-4' : 'font-bold'}>{row.who}</span>
        {row.kind === 'look' && <span className="block leading-snug">Wants you to look{row.note === null ? '' : <>: “{row.note}”</>}</span>}
        <span className="block text-base leading-snug text-ink-2">{[row.what, row.since].filter(Boolean).join(', ')}</span>
        {row.kind === 'coupon' && row.taken !== null && <span className="block text-base leading-snug">{row.taken}</span>}
      </span>
    </>
  )
}

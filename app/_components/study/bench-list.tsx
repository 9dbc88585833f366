type BenchListProps = { readonly bench: readonly { readonly id: string; readonly number: number; readonly tag: string }[]; readonly open?: boolean; readonly note?: string }

/** Which coupon lies where: whoever reads needs them laid out and numbered like this. */
export function BenchList({ bench, open = false, note }: BenchListProps) {
  return (
    <details open={open} className="print:hidden">
      <summary className="ring-inside flex min-h-12 w-fit cursor-pointer items-center underline underline-offset-4">Which coupon is which</summary>
      {note && <p className="max-w-prose">{note}</p>}
      <ol className="grid gap-1 py-2">
        {bench.map(({ id, number, tag }) => <li key={id} className="flex gap-3"><span className="figures w-8 shrink-0 text-right text-xl">{number}</span><span className="min-w-0">{tag}</span></li>)}
      </ol>
    </details>
  )
}

const KEYS: readonly (readonly [key: string, does: string])[] = [
  ['Tab, Enter, arrows', 'to the next cell, and to the rows above and below. Escape leaves the grid.'],
  ['=', 'this size and the rest of the station are as at the station before. At the first station: the second leg is as the first.'],
  ['L', 'looked for everything; nothing was found but what stands under “Seen”. Craters and fusion become y where they are empty. Goes to the row’s end.'],
  ['Enter at the row’s end', 'grades the coupon and goes to the next.'],
]

/** What the keys of the grid do. They work only while a cell of it has the focus. */
export function GridKeys({ snippets }: { readonly snippets: readonly string[] }) {
  return (
    <details open className="max-w-4xl border-y border-line py-2">
      <summary className="flex min-h-12 w-fit cursor-pointer items-center font-bold underline underline-offset-4">Keys</summary>
      <dl className="grid gap-1">
        {KEYS.map(([key, does]) => <div key={key}><dt className="inline font-bold">{key}: </dt><dd className="inline">{does}</dd></div>)}
        <div>
          <dt className="inline font-bold">Seen: </dt>
          <dd className="inline">kind, place, sizes, with commas: “undercut, 3, 1/64, 1/2, lower” (depth, then length). Several with semicolons: “undercut, 3, 1/64; pore, 5, 1/16”.</dd>
        </div>
        {snippets.length > 0 && (
          <div>
            <dt className="inline font-bold">1 to {snippets.length} in an empty remark: </dt>
            <dd className="inline">{snippets.map((body, index) => `${index + 1} “${body}”`).join(' · ')}</dd>
          </div>
        )}
      </dl>
    </details>
  )
}

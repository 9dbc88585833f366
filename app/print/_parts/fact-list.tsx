type FactListProps = { readonly title: string; readonly facts: readonly { readonly term: string; readonly value: string }[] }

/** Names and values under a heading, between rules. */
export function FactList({ title, facts }: FactListProps) {
  return (
    <section>
      <h2 className="pb-1 text-xl leading-tight">{title}</h2>
      <dl className="divide-y divide-line border-y border-line leading-tight">
        {facts.map(({ term, value }) => (
          <div key={term} className="flex justify-between gap-4 py-1 print:py-[0.7mm]">
            <dt>{term}</dt>
            <dd className="text-right font-bold">{value}</dd>
          </div>
        ))}
      </dl>
    </section>
  )
}

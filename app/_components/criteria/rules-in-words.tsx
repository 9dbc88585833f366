import type { CriteriaInWords } from '@/lib/reports/criteria-words'

/** The rules of a set: what each allows, for which welds, where it comes from and how sure that is. */
export function RulesInWords({ words }: { readonly words: CriteriaInWords }) {
  return (
    <section aria-labelledby="rules" className="grid gap-3">
      <h2 id="rules" className="text-2xl">Rules</h2>
      <ol className="divide-y divide-line border-y border-line">
        {words.rules.map((rule, index) => (
          <li key={`${rule.id} ${index}`} className="grid gap-x-8 gap-y-1 py-4 lg:grid-cols-[2fr_1fr]">
            <div>
              <h3 className="font-text text-base leading-normal font-bold">{rule.name}</h3>
              <p className="max-w-prose">{rule.allows}{rule.welds && ` ${rule.welds}`}</p>
              {rule.note && <p className="max-w-prose text-base text-ink-2">{rule.note}</p>}
            </div>
            <div className="text-base text-ink-2">
              <p className={rule.status === 'memory' ? 'font-bold' : ''}>{rule.source} · {rule.statusWord}</p>
              <p>Weight {rule.weight}. {rule.readiness}</p>
            </div>
          </li>
        ))}
      </ol>
      {words.fromMemory && <p className="font-bold">Some of these limits were recalled and not read again. Check them against the standard before you rely on them.</p>}
    </section>
  )
}

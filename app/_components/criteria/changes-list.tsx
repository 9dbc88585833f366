import type { RuleChange } from '@/lib/reports/criteria-changes'

type ChangesListProps = { readonly from: { readonly title: string; readonly version: number }; readonly changes: readonly RuleChange[] }

const WORD: Readonly<Record<RuleChange['change'], string>> = { added: 'added', removed: 'removed', changed: 'changed' }

/** What a set changed of the one it was begun from. */
export function ChangesList({ from, changes }: ChangesListProps) {
  return (
    <section aria-labelledby="changes" className="grid gap-3">
      <h2 id="changes" className="text-2xl">What it changed</h2>
      <p className="max-w-prose">Beside {from.title}, version {from.version}.{changes.length === 0 && ' No rule differs.'}</p>
      {changes.length > 0 && (
        <ul className="divide-y divide-line border-y border-line">
          {changes.map(({ name, change, before, after }, index) => (
            <li key={index} className="grid gap-1 py-3">
              <p><span className="font-bold">{name}</span> {WORD[change]}</p>
              {before !== null && <p className="max-w-prose text-ink-2">Before: {before}</p>}
              {after !== null && <p className="max-w-prose">{before === null ? after : `Now: ${after}`}</p>}
            </li>
          ))}
        </ul>
      )}
    </section>
  )
}

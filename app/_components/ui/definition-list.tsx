import type { ReactNode } from 'react'
import { VerdictMark, type VerdictKind } from './verdict-mark'

/** Rows of name and value between rules. Its children are DefinitionRow. */
export function DefinitionList({ children }: { readonly children: ReactNode }) {
  return <dl className="divide-y divide-line border-y border-line">{children}</dl>
}

type DefinitionRowProps = {
  readonly term: ReactNode
  readonly value: ReactNode
  /** Under the term: the limit, the source. */
  readonly note?: ReactNode
  /** The shape of a finding, with the word read out before the value. */
  readonly verdict?: { readonly kind: VerdictKind; readonly word: string }
}

/** One row: what it is, what it may be, what it is here. */
export function DefinitionRow({ term, value, note, verdict }: DefinitionRowProps) {
  return (
    <div className="flex items-center gap-3 py-3">
      {verdict && <VerdictMark verdict={verdict.kind} size="small" />}
      <dt className="min-w-0 flex-1">
        <span className="font-bold">{term}</span>
        {note && <span className="block text-base text-ink-2">{note}</span>}
      </dt>
      <dd className="max-w-[55%] text-right text-lg">
        {verdict && <span className="sr-only">{verdict.word}. </span>}
        {value}
      </dd>
    </div>
  )
}

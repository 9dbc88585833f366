import { DefinitionList, DefinitionRow } from '../ui/definition-list'

type Total = { readonly key: string; readonly term: string; readonly value: string; readonly note: string | null }

/** Coupons, time under the arc, wire used. */
export function TotalsList({ totals }: { readonly totals: readonly Total[] }) {
  return <DefinitionList>{totals.map(({ key, term, value, note }) => <DefinitionRow key={key} term={term} value={value} note={note} />)}</DefinitionList>
}

import type { PairCompared } from '@/lib/reports/agreement'
import { alikeText, widthWords, type Teller } from '@/lib/reports/agreement-words'
import { RuleAgreement } from './rule-agreement'

/** Two readers, folded: rule by rule, and who reads wider. */
export function PairDetails({ pair, teller }: { readonly pair: PairCompared; readonly teller: Teller }) {
  const [one, other] = pair.readerIds.map((id) => (id === teller.you ? 'You' : teller.nameOf(id))) as [string, string]
  const names: [string, string] = [one === 'You' ? 'you' : one, other]
  const title = `${one} and ${other}`
  return (
    <details className="border border-line bg-plate px-4">
      <summary className="ring-inside min-h-12 cursor-pointer py-3 font-head text-xl leading-tight font-semibold">{title}: {alikeText(pair.verdicts)} alike</summary>
      <div className="grid gap-3 pb-4">
        <RuleAgreement title={`${title}, rule by rule`} rules={pair.rules} sides={names} />
        <div className="max-w-prose">{widthWords(pair.widths, one, other, teller.units).map((sentence) => <p key={sentence}>{sentence}</p>)}</div>
      </div>
    </details>
  )
}

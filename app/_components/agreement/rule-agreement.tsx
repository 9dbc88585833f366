import type { RuleFigures } from '@/lib/reports/agreement'
import { apartText, neverPartedText, partedRules } from '@/lib/reports/agreement-words'
import { AgreementBars, type AgreementRow } from '../charts/agreement-bars'

type RuleAgreementProps = {
  readonly title: string
  readonly rules: readonly RuleFigures[]
  /** What the two sides are called; null where they change from coupon to coupon. */
  readonly sides: readonly [string, string] | null
  /** Above the rules: the whole coupon. */
  readonly whole?: RuleFigures['figures']
}

/** Rule by rule: a row for each over which somebody parted, and a sentence for the rest. */
export function RuleAgreement({ title, rules, sides, whole }: RuleAgreementProps) {
  const row = (label: string, figures: RuleFigures['figures']): AgreementRow => ({ key: label, label, figures, note: apartText(figures, sides) })
  const rows = [...(whole ? [row('The whole coupon', whole)] : []), ...partedRules(rules).map(({ rule, figures }) => row(rule, figures))]
  const never = neverPartedText(rules)
  return (
    <div className="grid gap-2">
      {rows.length > 0 && <AgreementBars title={title} groupWord="Rule" rows={rows} />}
      {never && <p className="max-w-prose">{never}</p>}
    </div>
  )
}

import { AGREEMENT_NOTES } from '@/lib/reports/agreement-words'

/** How the figures are to be read. `capped`: only so many coupons, the newest, were compared. */
export function AgreementNotes({ capped, more = [] }: { readonly capped: number | null; readonly more?: readonly string[] }) {
  return (
    <div className="grid max-w-prose gap-2 text-base text-ink-2">
      {capped !== null && <p className="font-bold">Only the newest {capped.toLocaleString('en-US')} coupons are compared; there are more.</p>}
      {[...AGREEMENT_NOTES, ...more].map((note) => <p key={note}>{note}</p>)}
    </div>
  )
}

/** How bias and limits of the widths are worked out. */
export const WIDTH_NOTE = 'Widths are compared at the places both measured, within 2 mm; each coupon counts once in the mean. Limits of agreement after Bland and Altman, Lancet 1986 and J. Biopharm. Stat. 2007 (from memory).'

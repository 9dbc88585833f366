import Link from 'next/link'
import { LinkButton } from '../ui/link-button'
import { VerdictMark, type VerdictKind } from '../ui/verdict-mark'

export type RemarkLine = {
  readonly id: string
  readonly body: string
  readonly by: string
  readonly couponId: string
  readonly about: string
  readonly verdict: { readonly kind: VerdictKind; readonly word: string } | null
}

type Props = {
  readonly remarks: readonly RemarkLine[]
  readonly couponHref: (couponId: string) => string
  /** Where the remarks before these are; null at the end. */
  readonly older: string | null
  /** Back to the newest; null when these are. */
  readonly newest: string | null
}

/** What instructors wrote on a student's coupons, the newest first, each leading to its coupon. */
export function RemarkList({ remarks, couponHref, older, newest }: Props) {
  return (
    <section id="remarks" aria-labelledby="remarks-title" className="grid scroll-mt-4 content-start gap-3">
      <h2 id="remarks-title" className="text-2xl">Remarks on coupons</h2>
      {remarks.length === 0 ? <p>{newest === null ? 'Nobody has written anything on a coupon yet.' : 'No older remarks.'}</p> : (
        <ul className="divide-y divide-line border-y border-line">
          {remarks.map(({ id, body, by, couponId, about, verdict }) => (
            <li key={id} className="py-3">
              <p className="whitespace-pre-line wrap-anywhere">{body}</p>
              <p className="flex flex-wrap items-center gap-x-2 text-base text-ink-2">
                <Link href={couponHref(couponId)} className="inline-flex min-h-12 items-center gap-2 underline">
                  {verdict && <><VerdictMark verdict={verdict.kind} size="small" /><span className="sr-only">{verdict.word}: </span></>}
                  <span>{about}</span>
                </Link>
                <span>{by}</span>
              </p>
            </li>
          ))}
        </ul>
      )}
      {(older ?? newest) !== null && (
        <nav aria-label="Pages of remarks" className="flex flex-wrap gap-2">
          {newest !== null && <LinkButton href={newest}>Newest remarks</LinkButton>}
          {older !== null && <LinkButton href={older}>Older remarks</LinkButton>}
        </nav>
      )}
    </section>
  )
}

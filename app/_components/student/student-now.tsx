import Link from 'next/link'
import { LinkButton } from '../ui/link-button'

export type NowInClass = {
  readonly classId: string
  readonly className: string
  readonly reasons: readonly string[]
  readonly waiting: readonly { readonly id: string; readonly what: string; readonly since: string; readonly taken: string | null }[]
}

type Props = {
  /** What they need of the reader, class by class; null where somebody else is to act. */
  readonly now: readonly NowInClass[] | null
  /** Where a test makes sense. */
  readonly answer: string
  /** The newest note staff keep on the student. */
  readonly note: { readonly body: string; readonly by: string } | null
}

/** What to do about a student next: why they need the reader, the coupons that wait, and what staff wrote last. */
export function StudentNow({ now, answer, note }: Props) {
  return (
    <section aria-labelledby="now" className="grid content-start gap-3">
      <h2 id="now" className="text-2xl">{now ? 'What to do next' : 'In short'}</h2>
      {!now && <p className="text-lg">{answer}</p>}
      {now?.length === 0 && <p>Nothing waits and nothing stands out: no coupon to look at, no repeated defect, no gap.</p>}
      {now?.map(({ classId, className, reasons, waiting }) => (
        <div key={classId} className="grid gap-2 border-l-[6px] border-ink bg-plate p-4">
          {now.length > 1 && <h3 className="text-xl">{className}</h3>}
          {reasons.length > 0 && <ul className="grid gap-1">{reasons.map((reason, index) => <li key={reason} className={index === 0 ? 'text-lg font-bold' : ''}>{reason}</li>)}</ul>}
          {waiting.length > 0 && (
            <ul className="grid gap-2">
              {waiting.map(({ id, what, since, taken }, index) => (
                <li key={id} className="flex flex-wrap items-center gap-x-4 gap-y-1">
                  <LinkButton kind={index === 0 && taken === null ? 'primary' : 'secondary'} href={`/teach/coupons/${id}`} aria-label={`Look at ${what}`}>Look at it</LinkButton>
                  <span className="min-w-0"><strong>{what}</strong><span className="block text-base text-ink-2">Waits since {since}.{taken && ` ${taken}`}</span></span>
                </li>
              ))}
            </ul>
          )}
          <p><Link href={`/teach/classes/${classId}`} className="inline-flex min-h-12 items-center underline">Open the class</Link></p>
        </div>
      ))}
      {note && (
        <div className="border-l-4 border-line pl-3">
          <p className="text-base text-ink-2">Last note for staff: {note.by}.</p>
          <p className="line-clamp-4 whitespace-pre-line wrap-anywhere">{note.body}</p>
        </div>
      )}
      <p><a href="#staff-notes" className="inline-flex min-h-12 items-center underline">{note ? 'All notes for staff' : 'Write a note for staff'}</a></p>
    </section>
  )
}

import { momentText } from '@/lib/reports/dates'
import { LinkButton } from '@/app/_components/ui/link-button'
import type { ElsewhereLine } from '@/app/_server/data/second-readings'

type Props = { readonly coupons: readonly ElsewhereLine[]; readonly timeZone: string }

/** Coupons of classes that have one instructor, for others to read; nothing where none waits. */
export function ElsewhereList({ coupons, timeZone }: Props) {
  if (coupons.length === 0) return null
  return (
    <section aria-labelledby="elsewhere" className="grid gap-2">
      <h2 id="elsewhere" className="text-2xl">Coupons of other classes to look at</h2>
      <p className="max-w-prose">Read them as you would your own. Your reading changes no grade; it shows how alike people judge.</p>
      <ul className="divide-y divide-line border-y border-line">
        {coupons.map(({ id, className, booth, exerciseTitle, number, since, takenBy }) => (
          <li key={id} className="flex flex-wrap items-center justify-between gap-4 py-3">
            <div>
              <h3 className="font-text text-lg leading-normal font-bold">{exerciseTitle}, no.&nbsp;{number}</h3>
              <p className="text-ink-2">{className}{booth !== null && `, booth ${booth}`} · sent {momentText(since, 'en', timeZone)}{takenBy && !takenBy.self && ` · ${takenBy.name} has it open`}</p>
            </div>
            <LinkButton href={`/teach/coupons/${id}`}>Look at it<span className="sr-only">: {exerciseTitle}, no. {number}</span></LinkButton>
          </li>
        ))}
      </ul>
    </section>
  )
}

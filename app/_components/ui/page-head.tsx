import type { ReactNode } from 'react'
import { bindLastWord } from './bind-last-word'

type PageHeadProps = {
  /** Where we are: 'Coupon 14 · pass 1 of 1'. */
  readonly eyebrow?: ReactNode
  readonly title: string
  /** One plain sentence under the title. */
  readonly lead?: ReactNode
  /** A figure or actions at the end of the line. */
  readonly aside?: ReactNode
}

/** The top of a screen: what it answers, and the heavy rule under it. */
export function PageHead({ eyebrow, title, lead, aside }: PageHeadProps) {
  return (
    <header className="flex flex-wrap items-end justify-between gap-x-6 gap-y-3 border-b-2 border-ink pb-4">
      <div className="max-w-prose min-w-0">
        {eyebrow && <p className="eyebrow">{eyebrow}</p>}
        <h1 className="text-3xl sm:text-4xl">{bindLastWord(title)}</h1>
        {lead && <p className="mt-2 text-lg">{lead}</p>}
      </div>
      {aside && <div className="flex flex-wrap items-center gap-2">{aside}</div>}
    </header>
  )
}

import type { ReactNode } from 'react'
import { bindLastWord } from './bind-last-word'
import { ProductMark } from './product-mark'

type DeadEndProps = {
  readonly title: string
  readonly children: ReactNode
  /** The next step: a button or link. */
  readonly action: ReactNode
}

const STEP = 'inline-flex min-h-12 items-center rounded-plate border-[1.5px] border-ink px-5 py-2 font-head text-xl leading-tight font-semibold underline-offset-4'

/** How the next steps look. Not the kit's buttons: every first load carries the pages for what failed, so they are light. */
export const NEXT_STEP = `${STEP} bg-ink text-paper hover:underline`
export const OTHER_STEP = `${STEP} bg-plate text-ink no-underline hover:bg-plate-2`

/** A whole page for when there is nothing else to show: a sentence and a next step. */
export function DeadEnd({ title, children, action }: DeadEndProps) {
  return (
    <main id="main" className="mx-auto grid min-h-dvh max-w-2xl content-center gap-4 px-4 py-12 sm:px-6">
      <ProductMark />
      <h1 className="text-4xl">{bindLastWord(title)}</h1>
      <div className="grid max-w-prose gap-2 text-lg">{children}</div>
      <div className="mt-2 flex flex-wrap gap-2">{action}</div>
    </main>
  )
}

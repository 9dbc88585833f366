import type { ReactNode } from 'react'
import { bindLastWord } from './bind-last-word'
import { ProductMark } from './product-mark'

type DeadEndProps = {
  readonly title: string
  readonly children: ReactNode
  /** The next step: a button or link. */
  readonly action: ReactNode
}

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

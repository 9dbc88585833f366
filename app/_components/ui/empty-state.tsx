import type { ReactNode } from 'react'

type EmptyStateProps = {
  /** What is not here yet: 'No coupons yet'. */
  readonly title: string
  /** What will be here, and what brings it. */
  readonly children: ReactNode
  /** The next step, as a button or link. */
  readonly action?: ReactNode
}

/** A place with nothing in it yet: it says what belongs here and what to do next. */
export function EmptyState({ title, children, action }: EmptyStateProps) {
  return (
    <section className="border-2 border-dashed border-line p-6 sm:p-8">
      <h2 className="text-2xl">{title}</h2>
      <div className="mt-2 max-w-prose">{children}</div>
      {action && <div className="mt-4 flex flex-wrap gap-2">{action}</div>}
    </section>
  )
}

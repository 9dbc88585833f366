import type { ReactNode } from 'react'

/** Lets a wide table scroll sideways by touch and by keyboard, without the page scrolling. */
export function TableRegion({ label, children }: { readonly label: string; readonly children: ReactNode }) {
  return (
    <div role="region" aria-label={label} tabIndex={0} className="ring-inside w-full overflow-x-auto [contain:inline-size] print:overflow-visible print:contain-none">
      {children}
    </div>
  )
}

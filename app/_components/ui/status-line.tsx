import type { ReactNode } from 'react'

/** One line that is read out when it changes, without moving the focus: 'Saved', '3 waiting to send'. Keep it mounted while empty. */
export function StatusLine({ children }: { readonly children?: ReactNode }) {
  return (
    <p role="status" className="min-h-6 text-ink-2 print:hidden">
      {children}
    </p>
  )
}

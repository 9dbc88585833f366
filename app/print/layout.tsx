import './print.css'
import type { ReactNode } from 'react'
import { requireRole } from '@/app/_server/auth/require-role'

/** Paper: no places to go, nothing that needs a script. Each page asks for the role itself, too. */
export default async function PrintLayout({ children }: { children: ReactNode }) {
  await requireRole('student', 'instructor', 'coordinator')
  return <div className="on-paper min-h-dvh">{children}</div>
}

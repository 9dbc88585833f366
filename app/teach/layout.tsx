import type { ReactNode } from 'react'
import { Shell } from '@/app/_components/ui/shell'
import { requireRole } from '@/app/_server/auth/require-role'
import { hasRole } from '@/app/_server/auth/viewer'
import { shellWords } from '@/app/_server/shell-words'

/** The frame of the instructor's room. */
export default async function TeachLayout({ children }: { children: ReactNode }) {
  const viewer = await requireRole('instructor')
  return (
    <Shell
      room="teach" home="/teach" person={{ name: viewer.name }} words={shellWords('en')} signOut="/api/sign-out"
      nav={[{ href: '/teach', label: 'Classes' }, ...(hasRole(viewer, 'coordinator') ? [{ href: '/program', label: 'Program' }] : [])]}
      personLinks={[{ href: '/account', label: 'Account' }]}
    >
      {children}
    </Shell>
  )
}

import type { ReactNode } from 'react'
import { program } from '@/lib/language/program'
import { say } from '@/lib/language/say'
import { Shell } from '@/app/_components/ui/shell'
import { requireRole } from '@/app/_server/auth/require-role'
import { hasRole } from '@/app/_server/auth/viewer'
import { shellWords } from '@/app/_server/shell-words'

/** The frame of the coordinator's room. */
export default async function ProgramLayout({ children }: { children: ReactNode }) {
  const viewer = await requireRole('coordinator')
  const { locale } = viewer
  return (
    <Shell
      room="program" home="/program" person={{ name: viewer.name }} words={shellWords(locale)} signOut="/api/sign-out"
      nav={[
        { href: '/program', label: say(program, locale, 'passRates') },
        { href: '/program/people', label: say(program, locale, 'people'), covers: ['/program/students'] },
        { href: '/program/classes', label: 'Classes' },
        { href: '/program/criteria', label: 'Criteria' },
        { href: '/program/readiness', label: say(program, locale, 'readiness') },
        { href: '/program/agreement', label: 'Agreement', covers: ['/program/studies'] },
        ...(hasRole(viewer, 'instructor') ? [{ href: '/teach', label: say(program, locale, 'teach') }] : []),
      ]}
      personLinks={[{ href: '/account', label: say(program, locale, 'account') }]}
    >
      {children}
    </Shell>
  )
}

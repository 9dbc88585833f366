import type { ReactNode } from 'react'
import { door } from '@/lib/language/door'
import { learn } from '@/lib/language/learn'
import { say } from '@/lib/language/say'
import { Shell } from '@/app/_components/ui/shell'
import { requireRole } from '@/app/_server/auth/require-role'
import { shellWords } from '@/app/_server/shell-words'
import { TabletIdle } from './_parts/tablet-idle'

/** The frame of the student's room. Each page asks for the role itself: a layout does not run again on every move. */
export default async function LearnLayout({ children }: { children: ReactNode }) {
  const viewer = await requireRole('student')
  return (
    <Shell
      room="learn" home="/learn" person={{ name: viewer.name }} words={shellWords(viewer.locale)} signOut="/api/sign-out"
      nav={[{ href: '/learn', label: say(learn, viewer.locale, 'home') }]}
      personLinks={viewer.tabletId === null ? [{ href: '/account', label: say(door, viewer.locale, 'account') }] : []}
    >
      {children}
      {viewer.tabletId !== null && <TabletIdle locale={viewer.locale} />}
    </Shell>
  )
}

import type { ReactNode } from 'react'
import { door } from '@/lib/language/door'
import { learn } from '@/lib/language/learn'
import { say } from '@/lib/language/say'
import { KeepPages } from '@/app/_components/outbox/keep-pages'
import { OutboxStatus } from '@/app/_components/outbox/outbox-status'
import { Shell } from '@/app/_components/ui/shell'
import { requireRole } from '@/app/_server/auth/require-role'
import { shellWords } from '@/app/_server/shell-words'
import { outboxPerson, ownDoor } from '@/app/_server/views/outbox-person'
import { TabletIdleLater } from './_parts/tablet-idle-later'

/** The frame of the student's room. Each page asks for the role itself: a layout does not run again on every move. */
export default async function LearnLayout({ children }: { children: ReactNode }) {
  const viewer = await requireRole('student')
  const person = await outboxPerson(viewer)
  return (
    <Shell
      room="learn" home="/learn" person={{ name: viewer.name }} words={shellWords(viewer.locale)} signOut="/api/sign-out"
      nav={[{ href: '/learn', label: say(learn, viewer.locale, 'home') }, { href: '/learn/progress', label: say(learn, viewer.locale, 'progress') }]}
      personLinks={viewer.tabletId === null ? [{ href: '/account', label: say(door, viewer.locale, 'account') }] : []}
    >
      {/* The worker reads from this whose page it is. */}
      <meta name="toeline-person" content={viewer.personId} />
      <KeepPages personId={viewer.personId} paths={['/learn', '/learn/waiting']} />
      <OutboxStatus locale={viewer.locale} person={person} door={ownDoor(viewer)} />
      {children}
      {viewer.tabletId !== null && <TabletIdleLater locale={viewer.locale} />}
    </Shell>
  )
}

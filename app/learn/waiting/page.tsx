import type { Metadata } from 'next'
import { door } from '@/lib/language/door'
import { offline } from '@/lib/language/offline'
import { say } from '@/lib/language/say'
import { WaitingList } from '@/app/_components/outbox/waiting-list'
import { PageHead } from '@/app/_components/ui/page-head'
import { requireRole } from '@/app/_server/auth/require-role'
import { outboxPerson, ownDoor } from '@/app/_server/views/outbox-person'

export async function generateMetadata(): Promise<Metadata> {
  return { title: say(offline, (await requireRole('student')).locale, 'waitingTitle') }
}

/** What is on this device only. The server knows nothing of it: the page is a frame, and opens without a connection. */
export default async function WaitingPage() {
  const viewer = await requireRole('student')
  return (
    <div className="grid gap-8">
      <PageHead title={say(offline, viewer.locale, 'waitingTitle')} lead={say(offline, viewer.locale, 'waitingLead')} />
      <WaitingList locale={viewer.locale} person={await outboxPerson(viewer)} door={ownDoor(viewer)} />
      <p className="text-base text-ink-2">{say(door, viewer.locale, 'practiceRecord')}</p>
    </div>
  )
}

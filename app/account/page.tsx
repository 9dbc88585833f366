import type { Metadata } from 'next'
import { door } from '@/lib/language/door'
import { say } from '@/lib/language/say'
import { Notice } from '@/app/_components/ui/notice'
import { PageHead } from '@/app/_components/ui/page-head'
import { Shell } from '@/app/_components/ui/shell'
import { homeOf } from '@/app/_server/auth/home'
import { requireViewer } from '@/app/_server/auth/require-role'
import { hasRole } from '@/app/_server/auth/viewer'
import { listOwnSessions, ownAccount } from '@/app/_server/data/people'
import { findProgram } from '@/app/_server/data/program'
import { readerLocale } from '@/app/_server/reader'
import { shellWords } from '@/app/_server/shell-words'
import { momentText } from '@/lib/reports/dates'
import { JoinOneMoreForm, PasswordForm, PreferencesForm, SessionList } from './account-forms'

export const generateMetadata = async (): Promise<Metadata> => ({ title: say(door, await readerLocale(), 'account') })

const PLACE = { '/learn': 'myPractice', '/teach': 'myClasses', '/program': 'myProgram' } as const

export default async function AccountPage() {
  const viewer = await requireViewer()
  const [account, sessions, program] = await Promise.all([ownAccount(viewer), listOwnSessions(viewer), findProgram(viewer)])
  const { locale } = viewer
  const words = shellWords(locale)
  return (
    <Shell room="learn" home={homeOf(viewer)} nav={[{ href: homeOf(viewer), label: say(door, locale, PLACE[homeOf(viewer)]) }]} person={{ name: viewer.name }} words={words} signOut="/api/sign-out">
      <div className="grid gap-8">
        <PageHead title={say(door, locale, 'accountTitle')} lead={say(door, locale, 'signedInAs', { name: account.signInName })} />
        {account.mustChangePassword && <Notice kind="info" word={say(door, locale, 'newPassword')}>{say(door, locale, 'mustChange')}</Notice>}
        <section className="grid gap-4">
          <h2 className="text-2xl">{say(door, locale, 'changePassword')}</h2>
          <PasswordForm locale={locale} signInName={account.signInName} />
        </section>
        <section className="grid gap-4">
          <h2 className="text-2xl">{say(door, locale, 'reading')}</h2>
          <PreferencesForm locale={locale} units={account.units} />
        </section>
        <section className="grid gap-4">
          <h2 className="text-2xl">{say(door, locale, 'places')}</h2>
          <SessionList
            locale={locale}
            sessions={sessions.map((session) => ({
              id: session.id,
              text: [browserName(session.device) ?? say(door, locale, 'unknownDevice'), say(door, locale, 'lastSeen', { when: momentText(session.lastSeen, locale, program.timeZone) }), session.here && say(door, locale, 'thisPlace')].filter(Boolean).join(', '),
            }))}
          />
        </section>
        {hasRole(viewer, 'student') && (
          <section className="grid gap-4">
            <h2 className="text-2xl">{say(door, locale, 'joinAnother')}</h2>
            <JoinOneMoreForm locale={locale} />
          </section>
        )}
      </div>
    </Shell>
  )
}

/** The browser and system a session began in, as far as its name tells. */
function browserName(device: string | null): string | null {
  const found = (names: readonly string[]): string | undefined => names.find((name) => device?.includes(name))
  return [found(['Firefox', 'Edg', 'Chrome', 'Safari']), found(['Android', 'iPhone', 'iPad', 'Windows', 'Mac', 'Linux'])].filter(Boolean).join(', ') || null
}

import type { Metadata } from 'next'
import { door } from '@/lib/language/door'
import { classLife } from '@/lib/language/class-life'
import { say } from '@/lib/language/say'
import { EmptyState } from '@/app/_components/ui/empty-state'
import { LinkButton } from '@/app/_components/ui/link-button'
import { Notice } from '@/app/_components/ui/notice'
import { PageHead } from '@/app/_components/ui/page-head'
import { Shell } from '@/app/_components/ui/shell'
import { homeOf } from '@/app/_server/auth/home'
import { requireViewer } from '@/app/_server/auth/require-role'
import { hasRole, type Viewer } from '@/app/_server/auth/viewer'
import { listOwnSessions, ownAccount } from '@/app/_server/data/people'
import { hasOwnPassword } from '@/app/_server/data/own-password'
import { hasOwnPin } from '@/app/_server/data/pins'
import { findProgram } from '@/app/_server/data/program'
import { readerLocale } from '@/app/_server/reader'
import { shellWords } from '@/app/_server/shell-words'
import { browserName } from '@/lib/reports/browser-name'
import { momentText } from '@/lib/reports/dates'
import { TabletIdle } from '@/app/learn/_parts/tablet-idle'
import { JoinOneMoreForm, PasswordForm, PreferencesForm, SessionList } from './account-forms'
import { PinForm } from './pin-form'

export const generateMetadata = async (): Promise<Metadata> => ({ title: say(door, await readerLocale(), 'account') })

const PLACE = { '/learn': 'myPractice', '/teach': 'myClasses', '/program': 'myProgram' } as const

export default async function AccountPage() {
  const viewer = await requireViewer()
  if (viewer.tabletId !== null) return <SharedTablet viewer={viewer} />
  const [account, sessions, program] = await Promise.all([ownAccount(viewer), listOwnSessions(viewer), findProgram(viewer)])
  const { locale } = viewer
  const words = shellWords(locale)
  // Until the first password is replaced, nothing else is taken from them.
  const isStudent = hasRole(viewer, 'student') && !account.mustChangePassword
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
        {isStudent && (
          <section className="grid gap-4">
            <h2 className="text-2xl">{say(classLife, locale, 'pinOwnTitle')}</h2>
            <PinForm locale={locale} isSet={await hasOwnPin(viewer)} asksPassword={await hasOwnPassword(viewer)} />
          </section>
        )}
        {isStudent && (
          <section className="grid gap-4">
            <h2 className="text-2xl">{say(door, locale, 'joinAnother')}</h2>
            <JoinOneMoreForm locale={locale} />
          </section>
        )}
      </div>
    </Shell>
  )
}

/** On a shared tablet there is nothing of the account to see or to change. */
function SharedTablet({ viewer }: { readonly viewer: Viewer }) {
  const { locale } = viewer
  return (
    <Shell room="learn" home="/learn" nav={[{ href: '/learn', label: say(door, locale, 'myPractice') }]} person={{ name: viewer.name }} words={shellWords(locale)} signOut="/api/sign-out">
      <EmptyState title={say(classLife, locale, 'accountElsewhere')} action={<LinkButton kind="primary" href="/learn">{say(classLife, locale, 'backHome')}</LinkButton>}>
        <p>{say(classLife, locale, 'accountElsewhereText')}</p>
      </EmptyState>
      <TabletIdle locale={locale} />
    </Shell>
  )
}

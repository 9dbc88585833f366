import type { Metadata } from 'next'
import { door } from '@/lib/language/door'
import { say } from '@/lib/language/say'
import { signOut } from '@/app/(door)/actions'
import { Notice } from '@/app/_components/ui/notice'
import { PageHead } from '@/app/_components/ui/page-head'
import { Shell } from '@/app/_components/ui/shell'
import { homeOf } from '@/app/_server/auth/home'
import { requireViewer } from '@/app/_server/auth/require-role'
import { hasRole } from '@/app/_server/auth/viewer'
import { ownAccount } from '@/app/_server/data/people'
import { shellWords } from '@/app/_server/shell-words'
import { JoinOneMoreForm, PasswordForm, PreferencesForm } from './account-forms'

export const metadata: Metadata = { title: 'Account' }

export default async function AccountPage() {
  const viewer = await requireViewer()
  const account = await ownAccount(viewer)
  const { locale } = viewer
  const words = shellWords(locale)
  return (
    <Shell room="learn" home={homeOf(viewer)} nav={[{ href: homeOf(viewer), label: words.home }]} person={{ name: viewer.name }} words={words} signOut={signOut}>
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

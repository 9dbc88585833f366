import type { Metadata } from 'next'
import { offline } from '@/lib/language/offline'
import { savedHere } from '@/lib/language/saved-here'
import { say, type Locale } from '@/lib/language/say'
import { LinkButton } from '@/app/_components/ui/link-button'
import { ProductMark } from '@/app/_components/ui/product-mark'

export const metadata: Metadata = { title: 'No connection / Sin conexión' }

type Props = { searchParams: Promise<Record<string, string | string[] | undefined>> }

/** Kept by the worker for whoever meets a page that is not on the device. It knows nobody, so it speaks both languages. */
export default async function OfflinePage({ searchParams }: Props) {
  const signingOut = (await searchParams)['of'] === 'sign-out'
  return (
    <main id="main" className="mx-auto grid min-h-dvh max-w-2xl content-center gap-10 px-4 py-12 sm:px-6">
      <ProductMark />
      {(['en', 'es'] as const).map((locale) => (signingOut ? <NotSignedOut key={locale} locale={locale} /> : <NoConnection key={locale} locale={locale} />))}
    </main>
  )
}

function NoConnection({ locale }: { readonly locale: Locale }) {
  const Title = locale === 'en' ? 'h1' : 'h2'
  return (
    <section lang={locale} className="grid gap-4">
      <Title className="text-4xl">{say(offline, locale, 'offlineTitle')}</Title>
      <p className="text-lg">{say(offline, locale, 'offlineText')}</p>
      <div><p className="font-bold">{say(offline, locale, 'worksTitle')}</p><p>{say(offline, locale, 'works')}</p></div>
      <div><p className="font-bold">{say(offline, locale, 'notTitle')}</p><p>{say(offline, locale, 'not')}</p></div>
      <div className="flex flex-wrap gap-2">
        <LinkButton kind="primary" href="/learn">{say(offline, locale, 'toPractice')}</LinkButton>
        <LinkButton href="/learn/waiting">{say(savedHere, locale, 'seeWaiting')}</LinkButton>
      </div>
    </section>
  )
}

function NotSignedOut({ locale }: { readonly locale: Locale }) {
  const Title = locale === 'en' ? 'h1' : 'h2'
  return (
    <section lang={locale} className="grid gap-4">
      <Title className="text-4xl">{say(offline, locale, 'signOutTitle')}</Title>
      <p className="text-lg">{say(offline, locale, 'signOutText')}</p>
    </section>
  )
}

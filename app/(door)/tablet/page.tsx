import type { Metadata } from 'next'
import Link from 'next/link'
import { classLife } from '@/lib/language/class-life'
import { door } from '@/lib/language/door'
import { say } from '@/lib/language/say'
import { EmptyState } from '@/app/_components/ui/empty-state'
import { LinkButton } from '@/app/_components/ui/link-button'
import { PageHead } from '@/app/_components/ui/page-head'
import { safeBack } from '@/app/_server/auth/home'
import { currentTablet, tabletNames, type OpenTablet } from '@/app/_server/auth/tablet'
import { readerLocale } from '@/app/_server/reader'
import { PinForm } from './pin-form'

export const generateMetadata = async (): Promise<Metadata> => ({ title: say(classLife, await readerLocale(), 'tabletTitle') })

type Props = { searchParams: Promise<Record<string, string | string[] | undefined>> }
const one = (value: string | string[] | undefined): string | undefined => (Array.isArray(value) ? value[0] : value)

/** Back to where the class's exercises are; what belongs to one person is nothing for the next. */
function backFor(tablet: OpenTablet, asked: string | undefined): string {
  const back = safeBack(asked)
  return back.startsWith(`/learn/${tablet.classId}/`) ? back : '/learn'
}

/** The names of the class, then the PIN of the one tapped. */
export default async function TabletPage({ searchParams }: Props) {
  const [asked, locale, tablet] = await Promise.all([searchParams, readerLocale(), currentTablet()])
  if (!tablet) {
    return (
      <EmptyState title={say(classLife, locale, 'tabletShutTitle')} action={<LinkButton kind="primary" href="/sign-in">{say(classLife, locale, 'withPassword')}</LinkButton>}>
        <p>{say(classLife, locale, 'tabletShutText')}</p>
      </EmptyState>
    )
  }
  const back = backFor(tablet, one(asked['back']))
  const names = await tabletNames(tablet)
  const chosen = names.find(({ id }) => id === one(asked['who']))
  const eyebrow = say(classLife, locale, 'tabletClass', { tablet: tablet.name, name: tablet.className })
  const toNames = `/tablet?back=${encodeURIComponent(back)}`
  if (chosen) {
    return (
      <>
        <PageHead eyebrow={eyebrow} title={say(classLife, locale, 'pinTitle', { name: chosen.name })} />
        <PinForm key={chosen.id} locale={locale} personId={chosen.id} back={back} />
        <div><LinkButton href={toNames}>{say(classLife, locale, 'notMe')}</LinkButton></div>
      </>
    )
  }
  const other = locale === 'en' ? 'es' : 'en'
  return (
    <>
      <PageHead eyebrow={eyebrow} title={say(classLife, locale, 'tabletTitle')} lead={<>{say(classLife, locale, 'tabletLead')} <span lang={other}>{say(classLife, other, 'tabletLead')}</span></>} />
      {names.length === 0 ? <p>{say(classLife, locale, 'noNames')}</p> : (
        <ul className="grid grid-cols-2 gap-2 sm:gap-3">
          {names.map(({ id, name }) => <li key={id}><LinkButton wide href={`/tablet?who=${id}&back=${encodeURIComponent(back)}`}>{name}</LinkButton></li>)}
        </ul>
      )}
      <p><Link href="/sign-in" className="inline-flex min-h-12 items-center">{say(classLife, locale, 'withPassword')}</Link></p>
      <p className="text-base text-ink-2">{say(door, locale, 'practiceRecord')}</p>
    </>
  )
}

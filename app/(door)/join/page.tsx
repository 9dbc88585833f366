import type { Metadata } from 'next'
import Link from 'next/link'
import { redirect } from 'next/navigation'
import { door } from '@/lib/language/door'
import { say } from '@/lib/language/say'
import { PageHead } from '@/app/_components/ui/page-head'
import { programBySlug } from '@/app/_server/auth/sign-in'
import { currentViewer } from '@/app/_server/auth/viewer'
import { readerLocale } from '@/app/_server/reader'
import { JoinForm } from './join-form'

export const generateMetadata = async (): Promise<Metadata> => ({ title: say(door, await readerLocale(), 'joinTitle') })

type Props = { searchParams: Promise<Record<string, string | string[] | undefined>> }
const one = (value: string | string[] | undefined): string => (Array.isArray(value) ? value[0] : value) ?? ''

export default async function JoinPage({ searchParams }: Props) {
  const asked = await searchParams
  if (await currentViewer()) redirect('/account')
  const locale = await readerLocale()
  const only = await programBySlug(null)
  return (
    <>
      <PageHead title={say(door, locale, 'joinTitle')} lead={say(door, locale, 'joinLead')} />
      <JoinForm locale={locale} program={{ ask: only === null, slug: one(asked['program']) }} code={one(asked['code']).slice(0, 20)} />
      <p><Link href="/sign-in">{say(door, locale, 'alreadyHere')}</Link></p>
    </>
  )
}

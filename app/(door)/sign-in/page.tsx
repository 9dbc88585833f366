import type { Metadata } from 'next'
import Link from 'next/link'
import { redirect } from 'next/navigation'
import { classLife } from '@/lib/language/class-life'
import { door } from '@/lib/language/door'
import { say } from '@/lib/language/say'
import { PageHead } from '@/app/_components/ui/page-head'
import { safeBack } from '@/app/_server/auth/home'
import { programBySlug } from '@/app/_server/auth/sign-in'
import { currentTablet } from '@/app/_server/auth/tablet'
import { currentViewer } from '@/app/_server/auth/viewer'
import { anyProgram } from '@/app/_server/data/program'
import { env } from '@/app/_server/env'
import { readerLocale } from '@/app/_server/reader'
import { SchoolAccount } from './school-account'
import { SignInForm } from './sign-in-form'

export const generateMetadata = async (): Promise<Metadata> => ({ title: say(door, await readerLocale(), 'signInTitle') })

type Props = { searchParams: Promise<Record<string, string | string[] | undefined>> }
const one = (value: string | string[] | undefined): string | undefined => (Array.isArray(value) ? value[0] : value)

export default async function SignInPage({ searchParams }: Props) {
  const asked = await searchParams
  const back = safeBack(one(asked['back']))
  if (await currentViewer()) redirect(back)
  if (!(await anyProgram())) redirect('/set-up')
  const locale = await readerLocale()
  const slug = one(asked['program']) ?? ''
  const only = await programBySlug(null)
  const error = one(asked['error'])
  const trouble = error === 'unlinked' || error === 'throttled' ? error : error ? 'failed' : null
  return (
    <>
      <PageHead title={say(door, locale, 'signInTitle')} lead={only?.name ?? say(door, locale, 'signInLead')} />
      <SignInForm locale={locale} program={{ ask: only === null, slug }} back={back} trouble={trouble} />
      {env().OIDC_ISSUER && <SchoolAccount locale={locale} name={env().OIDC_NAME} />}
      {(await currentTablet()) && <p><Link href="/tablet">{say(classLife, locale, 'toNames')}</Link></p>}
      <p><Link href={slug ? `/join?program=${encodeURIComponent(slug)}` : '/join'}>{say(door, locale, 'newHere')}</Link></p>
      <p className="text-base text-ink-2">{say(door, locale, 'practiceRecord')}</p>
    </>
  )
}

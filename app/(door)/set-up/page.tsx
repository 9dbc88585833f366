import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { door } from '@/lib/language/door'
import { say } from '@/lib/language/say'
import { PageHead } from '@/app/_components/ui/page-head'
import { anyProgram } from '@/app/_server/data/program'
import { readerLocale } from '@/app/_server/reader'
import { SetUpForm } from './set-up-form'

export const metadata: Metadata = { title: 'Set up' }

/** First visit to an empty server. Once a program is there, this page is not. */
export default async function SetUpPage() {
  if (await anyProgram()) notFound()
  const locale = await readerLocale()
  return (
    <>
      <PageHead title={say(door, locale, 'setUpTitle')} lead={say(door, locale, 'setUpLead')} />
      <SetUpForm locale={locale} />
    </>
  )
}

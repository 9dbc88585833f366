import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { learn } from '@/lib/language/learn'
import { print } from '@/lib/language/print'
import { say } from '@/lib/language/say'
import { paperFor } from '@/lib/reports/paper'
import { Sheet } from '@/app/print/_parts/sheet'
import { requireRole } from '@/app/_server/auth/require-role'
import { pageId } from '@/app/_server/page-id'
import { readerLocale } from '@/app/_server/reader'
import { boothCardSheet } from '@/app/_server/views/booth-card-sheet'
import { CautionSheet } from './caution-sheet'
import { CardRows } from './card-rows'

export const generateMetadata = async (): Promise<Metadata> => ({ title: say(print, await readerLocale(), 'boothCard') })

type Props = { params: Promise<{ exerciseId: string }>; searchParams: Promise<Record<string, string | string[] | undefined>> }

/** The card for the booth wall: how to set the machine in figures that read from a step away, then the cautions with their sources. */
export default async function BoothCardPage({ params, searchParams }: Props) {
  const viewer = await requireRole('student', 'instructor', 'coordinator')
  const { locale } = viewer
  const { paper } = await searchParams
  const sheet = await boothCardSheet(viewer, pageId((await params).exerciseId), new Date())
  if (!sheet) notFound()
  const { card } = sheet
  return (
    <Sheet paper={paperFor(typeof paper === 'string' ? paper : undefined, viewer.units)} locale={locale} foot={sheet.foot}>
      <header className="border-b-2 border-ink pb-2">
        <p className="eyebrow">{say(print, locale, 'boothCard')}, {sheet.programName}</p>
        <h1 className="text-4xl leading-none">{sheet.title}</h1>
      </header>
      {card.checks.length > 0 && (
        <section className="border-2 border-ink p-2 print:px-2 print:py-1">
          <h2 className="text-xl leading-tight">{say(learn, locale, 'setupChecks')}</h2>
          {card.checks.map((check) => <p key={check}>{check}</p>)}
        </section>
      )}
      <section className="grid gap-x-[8mm] gap-y-4 md:grid-cols-[4fr_5fr] print:grid-cols-[4fr_5fr]">
        <CardRows title={say(learn, locale, 'exerciseFacts')} rows={card.facts} />
        <CardRows title={say(learn, locale, 'howSet')} rows={card.settings} large />
      </section>
      <p className="leading-snug">{card.note && <strong>{card.note} </strong>}{say(learn, locale, 'startingPoint')}</p>
      <CautionSheet cautions={sheet.cautions} sources={sheet.sources} locale={locale} />
    </Sheet>
  )
}

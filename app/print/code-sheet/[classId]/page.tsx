import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { codeSheet as words } from '@/lib/language/code-sheet'
import { say, type Locale } from '@/lib/language/say'
import { paperFor } from '@/lib/reports/paper'
import { Sheet } from '@/app/print/_parts/sheet'
import { requireRole } from '@/app/_server/auth/require-role'
import { pageId } from '@/app/_server/page-id'
import { readerLocale } from '@/app/_server/reader'
import { codeSheet, type CodeSheet } from '@/app/_server/views/code-sheet'

export const generateMetadata = async (): Promise<Metadata> => ({ title: say(words, await readerLocale(), 'classCode') })

type Props = { params: Promise<{ classId: string }>; searchParams: Promise<Record<string, string | string[] | undefined>> }

/** The class code for the board: in figures that read across a room, as a symbol for a phone, and until when, in the languages of the class. */
export default async function CodeSheetPage({ params, searchParams }: Props) {
  const viewer = await requireRole('instructor', 'coordinator')
  const { locale } = viewer
  const query = await searchParams
  const languages = typeof query['languages'] === 'string' ? query['languages'] : undefined
  const asked = typeof query['paper'] === 'string' ? query['paper'] : undefined
  const sheet = (await codeSheet(viewer, pageId((await params).classId), languages, new Date())) ?? notFound()
  if (!sheet.code) return <NoCode sheet={sheet} locale={locale} />
  const paper = paperFor(asked, viewer.units)
  return (
    <>
      <LanguageChoice paper={paper} locale={locale} />
      <Sheet paper={paper} query={languages === undefined ? {} : { languages }} locale={locale} foot={[say(words, locale, 'printed', { at: sheet.printedAt })]} whole>
        <Board sheet={sheet} code={sheet.code} />
      </Sheet>
    </>
  )
}

function Board({ sheet: { className, term, programName, programSlug, typedAddress, languages }, code }: { readonly sheet: CodeSheet; readonly code: NonNullable<CodeSheet['code']> }) {
  const first = languages[0]?.locale ?? 'en'
  return (
    <>
      <header className="border-b-2 border-ink pb-2" lang={first}>
        <p className="eyebrow">{programName}, {term}</p>
        <h1 className="text-4xl leading-none">{say(words, first, 'joinClass', { name: className })}</h1>
      </header>
      <div className="grid items-center gap-6 py-2 sm:grid-cols-[auto_1fr] print:grid-cols-[auto_1fr]">
        <svg viewBox={`0 0 ${code.qr.size} ${code.qr.size}`} role="img" aria-label={`${say(words, first, 'opens')}: ${code.address}`} className="h-[72mm] w-[72mm] max-w-full bg-white text-black" shapeRendering="crispEdges">
          <path d={code.qr.path} fill="currentColor" />
        </svg>
        <div className="min-w-0">
          <p className="text-xl">{languages.map(({ locale }) => <span key={locale} lang={locale} className="block">{say(words, locale, 'classCode')}</span>)}</p>
          <p className="figures text-5xl leading-tight font-bold sm:text-6xl print:text-[46pt]">{code.text}</p>
        </div>
      </div>
      {languages.map(({ locale, until }) => (
        <section key={locale} lang={locale} className="border-t-2 border-ink pt-2 text-xl leading-snug print:text-[15pt]">
          {locale !== first && <h2 className="pb-1 text-2xl leading-tight">{say(words, locale, 'joinClass', { name: className })}</h2>}
          <p className="[overflow-wrap:anywhere]">{say(words, locale, 'scan')} {say(words, locale, 'orType', { address: typedAddress })} {programSlug !== null && say(words, locale, 'typeProgram', { slug: programSlug })}</p>
          <p>{say(words, locale, 'then')}</p>
          {until !== null && <p><strong>{say(words, locale, 'until', { when: until })}.</strong> {say(words, locale, 'lateNote')}</p>}
        </section>
      ))}
    </>
  )
}

/** On the screen only: which languages are printed. */
function LanguageChoice({ paper, locale }: { readonly paper: string; readonly locale: Locale }) {
  const ways = [['en', say(words, 'en', 'only'), 'en'], ['es', say(words, 'es', 'only'), 'es'], ['both', say(words, locale, 'both'), locale]] as const
  return (
    <ul className="mx-auto flex max-w-[216mm] flex-wrap gap-x-4 px-4 pt-4 text-base print:hidden">
      {ways.map(([languages, text, lang]) => <li key={languages} lang={lang}><a href={`?${new URLSearchParams({ paper, languages }).toString()}`} className="inline-flex min-h-6 items-center">{text}</a></li>)}
    </ul>
  )
}

function NoCode({ sheet: { classId, className, taught }, locale }: { readonly sheet: CodeSheet; readonly locale: Locale }) {
  return (
    <main id="main" className="mx-auto grid max-w-[216mm] gap-3 p-4 sm:p-8">
      <p className="eyebrow">{className}</p>
      <h1 className="text-3xl">{say(words, locale, 'noCode')}</h1>
      <p>{say(words, locale, taught ? 'noCodeText' : 'noCodeAsk')}</p>
      <p>{taught ? <a href={`/teach/classes/${classId}`}>{say(words, locale, 'toClass')}</a> : <a href="/program/classes">{say(words, locale, 'toClasses')}</a>}</p>
    </main>
  )
}

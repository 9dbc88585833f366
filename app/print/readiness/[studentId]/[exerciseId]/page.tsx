import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { print } from '@/lib/language/print'
import { say } from '@/lib/language/say'
import { chanceText, drawReadinessTrack } from '@/lib/reports/readiness-track'
import { paperFor } from '@/lib/reports/paper'
import { ReadinessTrackDrawing } from '@/app/_components/charts/readiness-track-drawing'
import { readinessTrackWords } from '@/app/_components/charts/readiness-track-words'
import { FactList } from '@/app/print/_parts/fact-list'
import { columnFrame } from '@/app/print/_parts/print-frame'
import { Sheet } from '@/app/print/_parts/sheet'
import { requireRole } from '@/app/_server/auth/require-role'
import { pageId } from '@/app/_server/page-id'
import { readerLocale } from '@/app/_server/reader'
import { readinessReport } from '@/app/_server/views/readiness-report'
import { EvidenceTable } from './evidence-table'
import { Signatures } from './signatures'

export const generateMetadata = async (): Promise<Metadata> => ({ title: say(print, await readerLocale(), 'report') })
const TRACK_HEIGHT = 210

type Props = { params: Promise<{ studentId: string; exerciseId: string }>; searchParams: Promise<Record<string, string | string[] | undefined>> }

/** What an instructor and a student sit over before a test: the estimate, everything it rests on, and two signatures. */
export default async function ReadinessReportPage({ params, searchParams }: Props) {
  const viewer = await requireRole('student', 'instructor', 'coordinator')
  const { locale } = viewer
  const { paper } = await searchParams
  const { studentId, exerciseId } = await params
  const report = await readinessReport(viewer, { studentId: pageId(studentId), exerciseId: pageId(exerciseId) }, new Date())
  if (!report) notFound()
  const { readiness } = report
  const told = (key: keyof typeof print.en, values?: Record<string, string | number>): string => say(print, locale, key, values)
  const words = readinessTrackWords({ ...readiness.track, level: readiness.level ?? 0.95, locale })
  const more = [readiness.holdsBack, ...readiness.afterMore].filter((sentence) => sentence !== null)
  return (
    <Sheet paper={paperFor(typeof paper === 'string' ? paper : undefined, viewer.units)} locale={locale} foot={report.foot}>
      <header className="flex items-end justify-between gap-6 border-b-2 border-ink pb-2">
        <div className="min-w-0">
          <p className="eyebrow">{told('report')}, {told('practiceRecord')}</p>
          <h1 className="text-4xl leading-none">{report.name}</h1>
          <p className="mt-1 leading-tight">{report.title} · {report.programName}</p>
        </div>
        {readiness.probability !== null && (
          <div className="shrink-0 text-right">
            <p className="figures text-4xl leading-none">{chanceText(readiness.probability)}</p>
            <p className="eyebrow">{told('chanceWord')}</p>
          </div>
        )}
      </header>
      <section>
        <p className="text-lg leading-snug font-bold">{readiness.answer}</p>
        {readiness.advice && <p className="text-lg leading-snug">{told('adviceWord')}: {readiness.advice}. {told('itAdvises')}</p>}
        {readiness.reasons.length > 0 && <ul className="mt-1 list-disc pl-5 leading-snug">{readiness.reasons.map((reason) => <li key={reason}>{reason}</li>)}</ul>}
      </section>
      <section className="grid gap-x-[6mm] gap-y-4 md:grid-cols-2 print:grid-cols-2">
        <div className="grid content-start gap-4 print:gap-3">
          <FactList title={told('whatItSays')} facts={report.numbers} />
          <FactList title={told('weld')} facts={report.facts} />
        </div>
        <div className="grid content-start gap-4 print:gap-3">
          {readiness.track.points.length > 0 && (
            <section>
              <h2 className="pb-1 text-xl leading-tight">{told('trackTitle')}</h2>
              <ReadinessTrackDrawing track={drawReadinessTrack(readiness.track, columnFrame(TRACK_HEIGHT))} words={words} />
            </section>
          )}
          {more.length > 0 && (
            <section>
              <h2 className="pb-1 text-xl leading-tight">{told('whatHolds')}</h2>
              {more.map((sentence) => <p key={sentence} className="leading-snug">{sentence}</p>)}
              {readiness.whyWide.length > 0 && <p className="leading-snug">{told('whyWide', { why: readiness.whyWide.join('; ') })}</p>}
            </section>
          )}
          <section>
            <h2 className="pb-1 text-xl leading-tight">{told('notMeasured')}</h2>
            {report.notMeasured.map((sentence) => <p key={sentence} className="leading-snug">{sentence}</p>)}
            <p className="leading-snug">{readiness.selfTrust}</p>
          </section>
          <section>
            <h2 className="pb-1 text-xl leading-tight">{told('previousTests')}</h2>
            {report.tests.length === 0
              ? <p className="leading-snug">{told('noPrevious')}</p>
              : <ul className="leading-snug">{report.tests.map((test) => <li key={test.id}>{test.on}: {told(test.passed ? 'passed' : 'failed')}</li>)}</ul>}
          </section>
        </div>
      </section>
      {report.evidence.length > 0 && <EvidenceTable rows={report.evidence} locale={locale} />}
      <Signatures locale={locale} student={report.name} />
    </Sheet>
  )
}

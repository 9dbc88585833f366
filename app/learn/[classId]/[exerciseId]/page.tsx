import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { cache } from 'react'
import { door } from '@/lib/language/door'
import { learn } from '@/lib/language/learn'
import { say } from '@/lib/language/say'
import { MarksOverTimeSvg } from '@/app/_components/charts/marks-over-time-svg'
import { ReadinessTrackInteractive } from '@/app/_components/charts/readiness-track-interactive'
import { BoothCardPanel } from '@/app/_components/course/booth-card-panel'
import { CautionList } from '@/app/_components/course/caution-list'
import { EmptyState } from '@/app/_components/ui/empty-state'
import { LinkButton } from '@/app/_components/ui/link-button'
import { PageHead } from '@/app/_components/ui/page-head'
import { BeadStripColumn } from '@/app/_components/weld/bead-strip-column'
import { requireRole } from '@/app/_server/auth/require-role'
import { pageId } from '@/app/_server/page-id'
import { exercisePractice } from '@/app/_server/views/exercise-practice'
import { readinessView } from '@/app/_server/views/readiness-view'
import { storyOf } from '@/app/_server/views/story'
import { LookPanel } from '@/app/learn/_parts/class-life-panel'
import { ConfirmCautions } from './confirm-cautions'

const STRIPS = 20

type Props = { params: Promise<{ classId: string; exerciseId: string }> }

/** Read once for the page and its title. */
const load = cache(async (classId: string, exerciseId: string) => {
  const viewer = await requireRole('student')
  const practice = await exercisePractice(viewer, pageId(classId), pageId(exerciseId))
  return practice ? { viewer, practice } : notFound()
})

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const { classId, exerciseId } = await params
  return { title: (await load(classId, exerciseId)).practice.exercise.title }
}

export default async function ExercisePage({ params }: Props) {
  const { classId, exerciseId } = await params
  const { viewer, practice } = await load(classId, exerciseId)
  const key = { studentId: viewer.personId, exerciseId: practice.exercise.id }
  const [readiness, story] = await Promise.all([readinessView(viewer, key, new Date()), storyOf(viewer, key, STRIPS)])
  const { locale } = viewer
  const logHref = `/learn/${practice.classRecord.id}/${practice.exercise.id}/log`
  const reasons = readiness ? [readiness.holdsBack, ...readiness.afterMore, ...readiness.whyWide.map((why) => say(learn, locale, 'whyWide', { why }))].filter((text) => text !== null) : []
  return (
    <div className="grid gap-8">
      <PageHead
        eyebrow={practice.classRecord.name} title={practice.exercise.title} lead={readiness && [readiness.answer, readiness.advice && `${readiness.advice}.`].filter(Boolean).join(' ')}
        aside={practice.confirmed && <LinkButton kind="primary" href={logHref}>{say(learn, locale, 'logCoupon')}</LinkButton>}
      />
      <BoothCardPanel card={practice.card} locale={locale} criteria={practice.criteriaTitle} />
      <div><LinkButton href={`/print/booth-card/${practice.exercise.id}`}>{say(learn, locale, 'printCard')}</LinkButton></div>
      <LookPanel viewer={viewer} classId={practice.classRecord.id} exerciseId={practice.exercise.id} />
      {!practice.confirmed && (
        <section className="grid gap-4">
          <h2 className="text-2xl">{say(learn, locale, 'cautions')}</h2>
          <p>{say(learn, locale, 'cautionsLead')}</p>
          <CautionList groups={practice.cautions} locale={locale} />
          <ConfirmCautions locale={locale} classId={practice.classRecord.id} exerciseId={practice.exercise.id} next={logHref} />
        </section>
      )}
      {story.rows.length === 0 ? (
        <EmptyState title={say(learn, locale, 'noCoupons')}><p>{say(learn, locale, 'noCouponsText')}</p></EmptyState>
      ) : (
        <>
          {readiness && readiness.kind === 'estimate' && (
            <section className="grid gap-3">
              <ReadinessTrackInteractive {...readiness.track} level={readiness.level ?? 0.95} locale={locale} />
              <ul className="list-disc pl-5">{reasons.map((sentence) => <li key={sentence}>{sentence}</li>)}</ul>
            </section>
          )}
          <BeadStripColumn title={say(learn, locale, 'story')} rows={story.rows.map((row) => ({ ...row, href: `/learn/coupons/${row.id}` }))} />
          <MarksOverTimeSvg coupons={story.marks} locale={locale} />
          <p>{readiness?.selfTrust}</p>
          <div><LinkButton href={`/learn/progress/${practice.exercise.id}`}>{say(learn, locale, 'progress')}</LinkButton></div>
        </>
      )}
      {practice.confirmed && (
        <details className="border-y border-line">
          <summary className="flex min-h-12 cursor-pointer items-center font-head text-xl font-semibold underline underline-offset-4">{say(learn, locale, 'cautions')}</summary>
          <div className="grid gap-4 pb-4">
            <p>{practice.confirmed}</p>
            <CautionList groups={practice.cautions} locale={locale} />
          </div>
        </details>
      )}
      <p className="text-base text-ink-2">{say(door, locale, 'practiceRecord')}</p>
    </div>
  )
}

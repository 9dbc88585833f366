import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { cache } from 'react'
import { door } from '@/lib/language/door'
import { learn } from '@/lib/language/learn'
import { myProgress } from '@/lib/language/my-progress'
import { say } from '@/lib/language/say'
import { ReadinessTrackSvg } from '@/app/_components/charts/readiness-track-svg'
import { GoalList } from '@/app/_components/progress/goal-list'
import { MarginRows } from '@/app/_components/progress/margin-rows'
import { TotalsList } from '@/app/_components/progress/totals-list'
import { EmptyState } from '@/app/_components/ui/empty-state'
import { LinkButton } from '@/app/_components/ui/link-button'
import { PageHead } from '@/app/_components/ui/page-head'
import { BeadStripColumn } from '@/app/_components/weld/bead-strip-column'
import { requireRole } from '@/app/_server/auth/require-role'
import { pageId } from '@/app/_server/page-id'
import { progressExercise, type ProgressExercise } from '@/app/_server/views/progress-exercise'

type Props = { params: Promise<{ exerciseId: string }> }

/** Read once for the page and its title. */
const load = cache(async (exerciseId: string) => {
  const viewer = await requireRole('student')
  const progress = await progressExercise(viewer, pageId(exerciseId), new Date())
  return progress ? { viewer, progress } : notFound()
})

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const { viewer, progress } = await load((await params).exerciseId)
  return { title: `${say(myProgress, viewer.locale, 'title')}, ${progress.exercise.title}` }
}

export default async function ExerciseProgressPage({ params }: Props) {
  const { viewer, progress } = await load((await params).exerciseId)
  const { locale } = viewer
  const told = (key: keyof typeof myProgress.en): string => say(myProgress, locale, key)
  const { exercise, goals, totals, story, href } = progress
  return (
    <div className="grid gap-8">
      <PageHead eyebrow={told('title')} title={exercise.title} lead={progress.readiness?.answer} />
      {goals.length > 0 && (
        <section className="border-l-[6px] border-ink bg-plate p-4">
          <h2 className="eyebrow font-text">{told('goals')}</h2>
          <GoalList goals={goals} />
        </section>
      )}
      {story.rows.length === 0 ? (
        <EmptyState title={say(learn, locale, 'noCoupons')}><p>{say(learn, locale, 'noCouponsText')}</p></EmptyState>
      ) : (
        <>
          <Readiness progress={progress} locale={locale} />
          <BeadStripColumn title={told('story')} rows={story.rows.map((row) => ({ ...row, href: `/learn/coupons/${row.id}` }))} />
          <section className="grid gap-3">
            <h2 className="text-2xl">{told('margins')}</h2>
            {progress.margins.rows.length === 0 ? <p>{told('noMargins')}</p> : (
              <>
                <p>{told('marginsLead')}</p>
                <MarginRows {...progress.margins} />
              </>
            )}
          </section>
          <section className="grid gap-2">
            <h2 className="text-2xl">{told('evenness')}</h2>
            {progress.consistency.map((sentence) => <p key={sentence}>{sentence}</p>)}
          </section>
        </>
      )}
      <section className="grid gap-3">
        <h2 className="text-2xl">{told('totalsTitle')}</h2>
        <TotalsList totals={totals} />
      </section>
      <div className="flex flex-wrap gap-2">
        {href && <LinkButton kind="primary" href={href}>{told('openExercise')}</LinkButton>}
        <LinkButton href="/learn/progress">{told('toMap')}</LinkButton>
      </div>
      <p className="text-base text-ink-2">{say(door, locale, 'practiceRecord')}</p>
    </div>
  )
}

/** How the chance moved and what stands behind it; nothing before there is an estimate, which the answer above has said. */
function Readiness({ progress: { readiness }, locale }: { readonly progress: ProgressExercise; readonly locale: 'en' | 'es' }) {
  if (!readiness || readiness.kind !== 'estimate') return null
  const reasons = [...readiness.reasons, readiness.holdsBack, ...readiness.afterMore].filter((text) => text !== null)
  return (
    <section className="grid gap-3">
      <ReadinessTrackSvg {...readiness.track} level={readiness.level ?? 0.95} locale={locale} />
      <h2 className="text-xl">{say(myProgress, locale, 'whatHolds')}</h2>
      <ul className="list-disc pl-5">{[...reasons, readiness.selfTrust].map((sentence) => <li key={sentence}>{sentence}</li>)}</ul>
    </section>
  )
}

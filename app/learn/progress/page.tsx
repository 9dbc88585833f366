import type { Metadata } from 'next'
import Link from 'next/link'
import { door } from '@/lib/language/door'
import { learn } from '@/lib/language/learn'
import { myProgress } from '@/lib/language/my-progress'
import { say } from '@/lib/language/say'
import { EyeFigure } from '@/app/_components/progress/eye-figure'
import { GoalList } from '@/app/_components/progress/goal-list'
import { SkillMapGrid } from '@/app/_components/progress/skill-map-grid'
import { TotalsList } from '@/app/_components/progress/totals-list'
import { EmptyState } from '@/app/_components/ui/empty-state'
import { HeatLegend } from '@/app/_components/ui/heat-legend'
import { LinkButton } from '@/app/_components/ui/link-button'
import { PageHead } from '@/app/_components/ui/page-head'
import { requireRole } from '@/app/_server/auth/require-role'
import { EYE_FRAME } from '@/app/_server/views/eye-view'
import { progressMap } from '@/app/_server/views/progress-map'

export async function generateMetadata(): Promise<Metadata> {
  const viewer = await requireRole('student')
  return { title: say(myProgress, viewer.locale, 'title') }
}

export default async function ProgressPage() {
  const viewer = await requireRole('student')
  const { locale } = viewer
  const told = (key: keyof typeof myProgress.en): string => say(myProgress, locale, key)
  const progress = await progressMap(viewer, new Date())
  if (!progress) return <EmptyState title={told('title')} action={<LinkButton kind="primary" href="/account">{say(learn, locale, 'joinOne')}</LinkButton>}><p>{told('noClass')}</p></EmptyState>
  return (
    <div className="grid gap-10">
      <PageHead title={told('title')} lead={progress.goals[0]?.goals[0] ?? told('noneYet')} eyebrow={progress.goals[0]?.title} />
      <section className="grid gap-4">
        <h2 className="text-2xl">{told('mapTitle')}</h2>
        <p>{told('mapLead')}</p>
        <HeatLegend words={{ title: told('legendTitle'), none: told('legendNone'), under: told('legendUnder'), andUp: told('legendAndUp') }} />
        <SkillMapGrid map={progress.map} locale={locale} />
      </section>
      {progress.goals.length > 0 && (
        <section className="grid gap-3">
          <h2 className="text-2xl">{told('goals')}</h2>
          {progress.goals.map((each) => (
            <div key={each.id} className="border-l-[6px] border-ink bg-plate p-4">
              <h3 className="text-xl"><Link href={each.href} className="inline-flex min-h-12 items-center">{each.title}</Link></h3>
              <GoalList goals={each.goals} />
            </div>
          ))}
        </section>
      )}
      <section className="grid gap-3">
        <h2 className="text-2xl">{told('nextTitle')}</h2>
        <ul className="list-disc pl-5">{progress.next.map((each) => <li key={each}>{each}</li>)}</ul>
      </section>
      <EyeFigure {...progress.eye} frame={EYE_FRAME} locale={locale} />
      <section className="grid gap-3">
        <h2 className="text-2xl">{told('totalsTitle')}</h2>
        <TotalsList totals={progress.totals} />
      </section>
      <div><LinkButton href={`/print/progress/${viewer.personId}`}>{say(learn, locale, 'printSummary')}</LinkButton></div>
      <p className="text-base text-ink-2">{say(door, locale, 'practiceRecord')}</p>
    </div>
  )
}

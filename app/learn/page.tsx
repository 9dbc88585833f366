import type { Metadata } from 'next'
import Link from 'next/link'
import { learn } from '@/lib/language/learn'
import { say } from '@/lib/language/say'
import { KeepPages } from '@/app/_components/outbox/keep-pages'
import { EmptyState } from '@/app/_components/ui/empty-state'
import { HeatCell } from '@/app/_components/ui/heat-cell'
import { LinkButton } from '@/app/_components/ui/link-button'
import { PageHead } from '@/app/_components/ui/page-head'
import { requireRole } from '@/app/_server/auth/require-role'
import { offlinePages } from '@/app/_server/views/offline-pages'
import { studentHome, type ExerciseRow } from '@/app/_server/views/student-home'
import { ClassLifePanel } from './_parts/class-life-panel'

export async function generateMetadata(): Promise<Metadata> {
  const viewer = await requireRole('student')
  return { title: say(learn, viewer.locale, 'home') }
}

export default async function LearnPage() {
  const viewer = await requireRole('student')
  const { locale } = viewer
  const home = await studentHome(viewer)
  if (home.classes.length === 0) {
    return (
      <EmptyState title={say(learn, locale, 'noClassTitle')} action={<LinkButton kind="primary" href="/account">{say(learn, locale, 'joinOne')}</LinkButton>}>
        <p>{say(learn, locale, 'noClassText')}</p>
      </EmptyState>
    )
  }
  return (
    <div className="grid gap-10">
      <KeepPages personId={viewer.personId} paths={offlinePages(home)} />
      {home.classes.map((each) => (
        <section key={each.id} className="grid gap-5">
          <PageHead eyebrow={each.term} title={each.heading} lead={home.totals} />
          {each.next && (
            <div className="border-l-[6px] border-ink bg-plate p-4">
              <p className="eyebrow">{say(learn, locale, 'nextUp')}</p>
              <h2 className="text-2xl"><Link href={each.next.href}>{each.next.title}</Link></h2>
              <p className="mt-1">{each.next.counts}</p>
              <div className="mt-3"><LinkButton kind="primary" href={each.next.href}>{say(learn, locale, 'openCard')}</LinkButton></div>
            </div>
          )}
          {!each.ended && <ClassLifePanel viewer={viewer} classId={each.id} />}
          {each.exercises.length === 0 ? (
            <EmptyState title={say(learn, locale, 'noExercisesTitle')}><p>{say(learn, locale, 'noExercisesText')}</p></EmptyState>
          ) : (
            <section>
              <h2 className="text-2xl">{say(learn, locale, 'allExercises')}</h2>
              <ul className="mt-2 divide-y divide-line border-y border-line">{each.exercises.map((row) => <ExerciseLine key={row.id} row={row} />)}</ul>
            </section>
          )}
        </section>
      ))}
      <div><LinkButton href={`/print/progress/${viewer.personId}`}>{say(learn, locale, 'printSummary')}</LinkButton></div>
    </div>
  )
}

function ExerciseLine({ row }: { readonly row: ExerciseRow }) {
  return (
    <li className="flex items-center gap-3 py-2">
      <HeatCell probability={row.standing.probability} text={row.standing.text} spoken={row.standing.spoken} />
      <div className="min-w-0 flex-1">
        <Link href={row.href} className="inline-flex min-h-12 items-center font-head text-xl leading-tight font-semibold">{row.title}</Link>
        <p className="text-base leading-snug text-ink-2">{row.after ?? [row.counts, row.standing.adviceText].filter(Boolean).join('. ')}</p>
      </div>
    </li>
  )
}

import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { cache } from 'react'
import { ReadinessTrackInteractive } from '@/app/_components/charts/readiness-track-interactive'
import { learn } from '@/lib/language/learn'
import { say } from '@/lib/language/say'
import { EmptyState } from '@/app/_components/ui/empty-state'
import { HeatCell } from '@/app/_components/ui/heat-cell'
import { LinkButton } from '@/app/_components/ui/link-button'
import { PageHead } from '@/app/_components/ui/page-head'
import { BeadStripColumn } from '@/app/_components/weld/bead-strip-column'
import { requireRole } from '@/app/_server/auth/require-role'
import { listStaffNotes } from '@/app/_server/data/staff-notes'
import { readinessView } from '@/app/_server/views/readiness-view'
import { storyOf } from '@/app/_server/views/story'
import { pageId } from '@/app/_server/page-id'
import { studentPlaces } from '@/app/_server/views/student-places'
import { studentRecord } from '@/app/_server/views/student-record'
import { momentText } from '@/lib/reports/dates'
import { ResetPasswordPanel } from './reset-password-panel'
import { StaffNotesPanel } from './staff-notes-panel'
import { StudentPlaces } from './student-places'

const STRIPS = 12

type Props = { params: Promise<{ studentId: string }>; searchParams: Promise<Record<string, string | string[] | undefined>> }

/** Read once for the page and its title. */
const load = cache(async (studentId: string) => {
  const viewer = await requireRole('instructor')
  const record = await studentRecord(viewer, pageId(studentId))
  return record ? { viewer, record } : notFound()
})

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  return { title: (await load((await params).studentId)).record.name }
}

export default async function StudentPage({ params, searchParams }: Props) {
  const { viewer, record } = await load((await params).studentId)
  const asked = (await searchParams)['exercise']
  const chosen = record.skills.find(({ exercise }) => exercise.id === asked) ?? record.skills[0]
  const key = chosen && { studentId: record.student.id, exerciseId: chosen.exercise.id }
  const [readiness, story] = key ? await Promise.all([readinessView(viewer, key, new Date()), storyOf(viewer, key, STRIPS)]) : [null, null]
  const notes = (await listStaffNotes(viewer, record.student.id)).map(({ id, body, author, writtenAt }) => ({ id, body, by: `${author}, ${momentText(writtenAt, 'en', record.program.timeZone)}` }))
  const places = await studentPlaces(viewer, record.student.id)
  const waiting = story?.coupons.filter((coupon) => coupon.waiting) ?? []
  return (
    <div className="grid gap-8">
      <PageHead
        title={record.name} lead={`${record.coupons} coupons, ${record.arcTime} under the arc`}
        aside={<LinkButton href={`/print/progress/${record.student.id}`}>Print the progress summary</LinkButton>}
      />
      {record.skills.length === 0 ? <EmptyState title="No coupons yet"><p>When this student logs a coupon it appears here.</p></EmptyState> : (
        <div className="grid gap-8 lg:grid-cols-[22rem_1fr]">
          <nav aria-label="Exercises">
            <ul className="divide-y divide-line border-y border-line">
              {record.skills.map(({ exercise, skill, standing }) => (
                <li key={exercise.id} className="flex items-center gap-3 py-2">
                  <HeatCell probability={standing.probability} text={standing.text} spoken={standing.spoken} waiting={skill.waitingCount > 0} />
                  <a href={`?exercise=${exercise.id}`} aria-current={exercise.id === chosen?.exercise.id || undefined} className="inline-flex min-h-12 flex-1 items-center font-bold aria-current:no-underline">
                    <span>{exercise.title}<span className="block text-base font-normal text-ink-2">{skill.acceptedCount} accepted of {skill.inspectedCount} inspected, {skill.couponCount} logged</span></span>
                  </a>
                </li>
              ))}
            </ul>
          </nav>
          {chosen && story && (
            <section className="grid min-w-0 content-start gap-5">
              <h2 className="text-3xl">{chosen.exercise.title}</h2>
              {readiness && <p className="text-lg">{[readiness.answer, readiness.advice && `${readiness.advice}.`].filter(Boolean).join(' ')}</p>}
              {readiness?.kind === 'estimate' && (
                <>
                  <ReadinessTrackInteractive {...readiness.track} level={readiness.level ?? 0.95} locale="en" />
                  <ul className="list-disc pl-5">{[readiness.holdsBack, ...readiness.reasons, ...readiness.afterMore, ...readiness.whyWide.map((why) => say(learn, 'en', 'whyWide', { why }))].filter(Boolean).map((text) => <li key={text}>{text}</li>)}</ul>
                </>
              )}
              <p>{readiness?.selfTrust}</p>
              <div className="flex flex-wrap gap-2">
                <LinkButton href={`/print/readiness/${record.student.id}/${chosen.exercise.id}`}>Print the readiness report</LinkButton>
                <LinkButton href={`/print/booth-card/${chosen.exercise.id}`}>Print the booth card</LinkButton>
              </div>
              {waiting.length > 0 && (
                <div className="flex flex-wrap gap-2">
                  {waiting.map((coupon) => <LinkButton key={coupon.id} kind="primary" href={`/teach/coupons/${coupon.id}`}>No. {coupon.number} waits for your look</LinkButton>)}
                </div>
              )}
              {story.rows.length > 0 && <BeadStripColumn title="Latest coupons, oldest first" rows={story.rows.map((row) => ({ ...row, href: `/teach/coupons/${row.id}` }))} />}
            </section>
          )}
        </div>
      )}
      {record.attempts.length > 0 && (
        <section>
          <h2 className="text-2xl">Tests</h2>
          <ul className="mt-2 list-disc pl-5">{record.attempts.map((attempt) => <li key={attempt.id}>{attempt.title}, {attempt.on}: {attempt.passed ? 'passed' : 'did not pass'}</li>)}</ul>
        </section>
      )}
      <StudentPlaces places={places} />
      <StaffNotesPanel studentId={record.student.id} notes={notes} />
      <ResetPasswordPanel studentId={record.student.id} name={record.name} signInName={record.student.signInName} />
    </div>
  )
}

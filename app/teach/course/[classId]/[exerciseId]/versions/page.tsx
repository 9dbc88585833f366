import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { LinkButton } from '@/app/_components/ui/link-button'
import { PageHead } from '@/app/_components/ui/page-head'
import { requireRole } from '@/app/_server/auth/require-role'
import { listVersions } from '@/app/_server/data/exercise-versions'
import { findProgram } from '@/app/_server/data/program'
import { pageId } from '@/app/_server/page-id'
import { versionChanges } from '@/lib/course/version-changes'
import { momentText } from '@/lib/reports/dates'

export const metadata: Metadata = { title: 'Versions of an exercise' }

type Props = { params: Promise<{ classId: string; exerciseId: string }> }

/** Every version of an exercise, newest first, with what changed in words. */
export default async function VersionsPage({ params }: Props) {
  const viewer = await requireRole('instructor')
  const { classId, exerciseId } = await params
  const [versions, { timeZone }] = await Promise.all([listVersions(viewer, { classId: pageId(classId), exerciseId: pageId(exerciseId) }), findProgram(viewer)])
  const newest = versions[0] ?? notFound()
  return (
    <div className="grid gap-8">
      <PageHead
        eyebrow="Versions" title={newest.exercise.title} lead="An edit never changes the past: every coupon is judged by the version it was welded to."
        aside={<LinkButton href={`/teach/course/${classId}/${exerciseId}`}>Back to the exercise</LinkButton>}
      />
      <ol className="divide-y divide-line border-y border-line">
        {versions.map(({ exercise, madeAt, by, coupons }, index) => {
          const before = versions[index + 1]
          return (
            <li key={exercise.version} className="grid gap-2 py-4">
              <h2 className="text-xl">Version {exercise.version}</h2>
              <p className="text-base text-ink-2">{[momentText(madeAt, 'en', timeZone), by, `${coupons} ${coupons === 1 ? 'coupon' : 'coupons'}`].filter(Boolean).join(', ')}</p>
              {before ? <ul className="list-disc pl-5">{versionChanges(before.exercise, exercise, viewer.units).map((sentence) => <li key={sentence}>{sentence}</li>)}</ul> : <p>The first version.</p>}
            </li>
          )
        })}
      </ol>
    </div>
  )
}

import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { cache } from 'react'
import { Button } from '@/app/_components/ui/button'
import { EmptyState } from '@/app/_components/ui/empty-state'
import { PageHead } from '@/app/_components/ui/page-head'
import { Select } from '@/app/_components/ui/select'
import { Table } from '@/app/_components/ui/table'
import { VerdictWord } from '@/app/_components/ui/verdict-word'
import { requireRole } from '@/app/_server/auth/require-role'
import { findTaughtClass, listClassStudents } from '@/app/_server/data/classes'
import { listClassExercises } from '@/app/_server/data/exercises'
import { listClassAttempts } from '@/app/_server/data/test-attempts'
import { pageId } from '@/app/_server/page-id'
import { dateText } from '@/lib/reports/dates'
import { shareText } from '@/lib/reports/share-text'

type Props = { params: Promise<{ classId: string }> }

/** Read once for the page and its title. */
const load = cache(async (classId: string) => {
  const viewer = await requireRole('instructor')
  const taught = await findTaughtClass(viewer, pageId(classId))
  return taught ? { viewer, taught } : notFound()
})

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  return { title: `Tests: ${(await load((await params).classId)).taught.name}` }
}

export default async function ClassTestsPage({ params }: Props) {
  const { viewer, taught } = await load((await params).classId)
  const [students, exercises, attempts] = await Promise.all([
    listClassStudents(viewer, taught.id), listClassExercises(viewer, taught.id), listClassAttempts(viewer, taught.id),
  ])
  return (
    <div className="grid gap-8">
      <PageHead eyebrow={taught.name} title="Tests" lead="Record a test you witnessed. It is judged by the structural code; the authority it is taken for decides." />
      <form method="get" action={`/teach/classes/${taught.id}/tests/new`} className="grid max-w-3xl gap-3 sm:grid-cols-[1fr_2fr_auto] sm:items-end">
        <Select label="Student" name="student" choices={students.map(({ id, givenName, familyName }) => ({ value: id, label: `${givenName} ${familyName}` }))} />
        <Select label="Exercise" name="exercise" choices={exercises.map(({ exercise }) => ({ value: exercise.id, label: exercise.title }))} />
        <Button type="submit" kind="primary">Record a test</Button>
      </form>
      {attempts.length === 0 ? <EmptyState title="No tests yet"><p>A recorded test appears here with its result.</p></EmptyState> : (
        <Table
          caption="Tests of this class, latest first" captionHidden
          columns={[{ key: 'who', head: 'Student' }, { key: 'what', head: 'Exercise' }, { key: 'on', head: 'Day' }, { key: 'said', head: 'Chance put before', numeric: true }, { key: 'result', head: 'Result' }]}
          rows={attempts.map((attempt) => ({
            key: attempt.id,
            cells: [
              <a key="who" href={`/teach/tests/${attempt.id}`}>{attempt.student}</a>, attempt.exerciseTitle, dateText(attempt.testedOn, 'en', 'UTC'),
              attempt.forecast === null ? '–' : shareText(attempt.forecast),
              <VerdictWord key="result" verdict={attempt.passed ? 'accept' : 'reject'} word={attempt.passed ? 'Passed' : 'Did not pass'} />,
            ],
          }))}
        />
      )}
    </div>
  )
}

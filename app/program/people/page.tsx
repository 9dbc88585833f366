import type { Metadata } from 'next'
import Link from 'next/link'
import { EmptyState } from '@/app/_components/ui/empty-state'
import { PageHead } from '@/app/_components/ui/page-head'
import { Table } from '@/app/_components/ui/table'
import { requireRole } from '@/app/_server/auth/require-role'
import { listClasses } from '@/app/_server/data/classes'

export const metadata: Metadata = { title: 'People' }

/** The classes, each with its way to its people. */
export default async function PeoplePage() {
  const classes = await listClasses(await requireRole('coordinator'))
  return (
    <div className="grid gap-8">
      <PageHead title="People" lead="Choose a class to bring in its roster, move or withdraw students, and set who teaches it." />
      {classes.length === 0 ? <EmptyState title="No classes yet"><p>People are kept class by class.</p></EmptyState> : (
        <Table
          caption="Classes" captionHidden
          columns={[{ key: 'class', head: 'Class' }, { key: 'term', head: 'Term' }, { key: 'instructors', head: 'Instructors' }]}
          rows={classes.map(({ id, name, term, instructors }) => ({
            key: id,
            cells: [
              <Link key="name" href={`/program/people/${id}`} className="inline-flex min-h-12 items-center underline">{name}</Link>,
              term.name, instructors.map((each) => each.name).join(', ') || 'none',
            ],
          }))}
        />
      )}
    </div>
  )
}

import type { Metadata } from 'next'
import { LinkButton } from '@/app/_components/ui/link-button'
import { PageHead } from '@/app/_components/ui/page-head'
import { requireRole } from '@/app/_server/auth/require-role'
import { listClasses } from '@/app/_server/data/classes'
import { InstructorForm } from './instructor-form'

export const metadata: Metadata = { title: 'New instructor' }

/** Makes an instructor's account. */
export default async function NewInstructorPage() {
  const classes = await listClasses(await requireRole('coordinator'))
  return (
    <div className="grid gap-8">
      <PageHead
        title="New instructor" lead="The account begins with a password that is shown once and replaced at the first sign-in."
        aside={<LinkButton href="/program/people">All people</LinkButton>}
      />
      <InstructorForm classes={classes.map(({ id, name, term }) => ({ value: id, label: `${name}, ${term.name}` }))} />
    </div>
  )
}

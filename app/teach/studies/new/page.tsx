import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import type { ComponentProps } from 'react'
import { Button } from '@/app/_components/ui/button'
import { EmptyState } from '@/app/_components/ui/empty-state'
import { LinkButton } from '@/app/_components/ui/link-button'
import { PageHead } from '@/app/_components/ui/page-head'
import { Select } from '@/app/_components/ui/select'
import { requireRole } from '@/app/_server/auth/require-role'
import { pageId } from '@/app/_server/page-id'
import { classesToStudy, newStudyView } from '@/app/_server/views/gauge-studies'
import { NewStudyForm } from './new-study-form'

export const metadata: Metadata = { title: 'Open a gauge study' }

type Props = { searchParams: Promise<Record<string, string | string[] | undefined>> }

const back = <LinkButton href="/teach/studies">All studies</LinkButton>

export default async function NewStudyPage({ searchParams }: Props) {
  const viewer = await requireRole('instructor')
  const [asked, classes] = [(await searchParams)['class'], await classesToStudy(viewer)]
  const classId = typeof asked === 'string' ? pageId(asked) : classes.length === 1 ? classes[0]?.id : undefined
  if (classId === undefined) return <ChooseClass classes={classes.map(({ id, name, term }) => ({ value: id, label: `${name}, ${term.name}` }))} />
  const { classRecord, groups } = (await newStudyView(viewer, classId)) ?? notFound()
  const names = classRecord.instructors.map(({ name }) => name)
  return (
    <div className="grid gap-8">
      <PageHead
        eyebrow={classRecord.name} title="Open a gauge study" aside={back}
        lead={`Who reads: ${names.join(', ')}.${names.length < 2 ? ' A study needs two. The coordinator can give the class another instructor, now or later.' : ''}`}
      />
      <Form archived={classRecord.archived} classId={classRecord.id} groups={groups} />
    </div>
  )
}

function Form({ archived, ...form }: ComponentProps<typeof NewStudyForm> & { readonly archived: boolean }) {
  if (archived) return <EmptyState title="This class is archived"><p>No study is opened in it any more.</p></EmptyState>
  if (form.groups.length === 0) return <EmptyState title="No coupons yet"><p>Coupons of the class can be chosen here once they are logged.</p></EmptyState>
  return <NewStudyForm {...form} />
}

function ChooseClass({ classes }: { readonly classes: readonly { readonly value: string; readonly label: string }[] }) {
  return (
    <div className="grid gap-8">
      <PageHead title="Open a gauge study" lead="The coupons of a study are of one class, and its instructors read them." aside={back} />
      {classes.length === 0 ? <EmptyState title="You teach no class yet"><p>The coordinator assigns instructors to classes.</p></EmptyState> : (
        <form method="get" className="grid max-w-xl gap-3 sm:grid-cols-[1fr_auto] sm:items-end">
          <Select label="Class" name="class" choices={classes} />
          <Button type="submit" kind="primary">Go on</Button>
        </form>
      )}
    </div>
  )
}

import type { Metadata } from 'next'
import { agreementAnswer } from '@/lib/reports/agreement-words'
import { AgreementNotes, WIDTH_NOTE } from '@/app/_components/agreement/agreement-notes'
import { OwnEyesReport } from '@/app/_components/agreement/own-eyes-report'
import { EmptyState } from '@/app/_components/ui/empty-state'
import { PageHead } from '@/app/_components/ui/page-head'
import { requireRole } from '@/app/_server/auth/require-role'
import { MOST_COMPARED } from '@/app/_server/views/agreement'
import { programEyes } from '@/app/_server/views/own-eyes'
import { ALL_TERMS } from '@/app/_server/views/pass-rates'
import { TermForm } from '../../term-form'

export const metadata: Metadata = { title: 'How students see their own welds' }

type Props = { searchParams: Promise<Record<string, string | string[] | undefined>> }

/** The students of the program against their instructors, for the coordinator. */
export default async function ProgramEyesPage({ searchParams }: Props) {
  const viewer = await requireRole('coordinator')
  const asked = (await searchParams)['term']
  const view = await programEyes(viewer, typeof asked === 'string' ? asked : undefined)
  const none = view.compared.coupons === 0
  const [answer, ...more] = none ? [] : agreementAnswer(view.compared, 'Student and instructor')
  return (
    <div className="grid gap-10">
      <PageHead
        eyebrow={view.term?.name ?? 'All terms'} title="How students see their own welds" lead={answer}
        aside={<TermForm terms={view.terms} chosen={view.term?.id ?? ALL_TERMS} locale={viewer.locale} />}
      />
      {none ? <EmptyState title="Nothing to compare yet"><p>Coupons that both the student and an instructor looked at are compared here.</p></EmptyState> : (
        <>
          {more.length > 0 && <div className="-mt-6 grid max-w-prose gap-2">{more.map((sentence) => <p key={sentence}>{sentence}</p>)}</div>}
          <OwnEyesReport compared={view.compared} leanings={view.leanings} units={viewer.units} />
          <AgreementNotes capped={view.capped ? MOST_COMPARED : null} more={[WIDTH_NOTE]} />
        </>
      )}
    </div>
  )
}

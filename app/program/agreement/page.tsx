import type { Metadata } from 'next'
import { agreementAnswer, apartText } from '@/lib/reports/agreement-words'
import { AgreementNotes, WIDTH_NOTE } from '@/app/_components/agreement/agreement-notes'
import { LeaningList } from '@/app/_components/agreement/leaning-list'
import { PairDetails } from '@/app/_components/agreement/pair-details'
import { RuleAgreement } from '@/app/_components/agreement/rule-agreement'
import { AgreementBars } from '@/app/_components/charts/agreement-bars'
import { WidthBiasBars } from '@/app/_components/charts/width-bias-bars'
import { DownloadLink } from '@/app/_components/ui/download-link'
import { EmptyState } from '@/app/_components/ui/empty-state'
import { LinkButton } from '@/app/_components/ui/link-button'
import { PageHead } from '@/app/_components/ui/page-head'
import { requireRole } from '@/app/_server/auth/require-role'
import { findSecondShare } from '@/app/_server/data/second-share'
import { MOST_COMPARED, programAgreement, type ProgramAgreement } from '@/app/_server/views/agreement'
import { ALL_TERMS } from '@/app/_server/views/pass-rates'
import { TermForm } from '../term-form'
import { ShareForm } from './share-form'

export const metadata: Metadata = { title: 'Agreement' }

type Props = { searchParams: Promise<Record<string, string | string[] | undefined>> }

/** Whether the program's instructors judge alike, for the coordinator. */
export default async function AgreementPage({ searchParams }: Props) {
  const viewer = await requireRole('coordinator')
  const asked = (await searchParams)['term']
  const [view, share] = await Promise.all([programAgreement(viewer, typeof asked === 'string' ? asked : undefined), findSecondShare(viewer)])
  const chosen = view.term?.id ?? ALL_TERMS
  const { all } = view.report
  const [answer, ...more] = all.coupons === 0 ? [] : agreementAnswer(all, 'Two readers')
  return (
    <div className="grid gap-10">
      <PageHead
        eyebrow={view.term?.name ?? 'All terms'} title="Agreement" lead={answer}
        aside={(
          <div className="flex flex-wrap items-end gap-2">
            <TermForm terms={view.terms} chosen={chosen} locale={viewer.locale} />
            {all.coupons > 0 && <DownloadLink href={`/api/exports/agreement?term=${encodeURIComponent(chosen)}`}>Download as CSV</DownloadLink>}
          </div>
        )}
      />
      {all.coupons === 0 ? <Nothing term={view.term?.name ?? null} /> : <Found view={view} more={more} />}
      <section className="grid gap-3">
        <h2 className="text-2xl">Elsewhere</h2>
        <div className="flex flex-wrap gap-2">
          <LinkButton href="/program/agreement/students">How students see their own welds</LinkButton>
          <LinkButton href="/program/studies">Gauge studies</LinkButton>
        </div>
      </section>
      {share !== null && <section className="grid gap-3"><h2 className="text-2xl">Second readings</h2><ShareForm share={share} /></section>}
      {all.coupons > 0 && <AgreementNotes capped={view.capped ? MOST_COMPARED : null} more={[WIDTH_NOTE]} />}
    </div>
  )
}

function Nothing({ term }: { readonly term: string | null }) {
  return (
    <EmptyState title={term === null ? 'No coupon has been read twice yet' : `No coupon of ${term} has been read twice`}>
      <p>Some of the coupons graded from now on are offered to a second instructor, who is not told. What the two say is compared here, and no grade changes by it.</p>
    </EmptyState>
  )
}

function Found({ view: { report, teller, leanings }, more }: { readonly view: ProgramAgreement; readonly more: readonly string[] }) {
  const { all, pairs, readers } = report
  const pairName = ([one, other]: readonly [string, string]): string => `${teller.nameOf(one)} and ${teller.nameOf(other)}`
  return (
    <>
      {more.length > 0 && <div className="-mt-6 grid max-w-prose gap-2">{more.map((sentence) => <p key={sentence}>{sentence}</p>)}</div>}
      <LeaningList title="Who parts from the others one way" {...leanings} none="Nobody parts from the others one way, as far as these coupons can tell. It takes six coupons parted upon." />
      <RuleAgreement title="Rule by rule" rules={all.rules} sides={null} />
      <section className="grid gap-3">
        <AgreementBars
          title="The whole coupon, by readers" groupWord="Readers"
          rows={pairs.map(({ readerIds, verdicts }) => ({ key: readerIds.join(), label: pairName(readerIds), figures: verdicts, note: apartText(verdicts, [teller.nameOf(readerIds[0]), teller.nameOf(readerIds[1])]) }))}
        />
        {pairs.map((pair) => <PairDetails key={pair.readerIds.join()} pair={pair} teller={teller} />)}
      </section>
      <WidthBiasBars title="Measured widths, each reader against all others" groupWord="Reader" rows={readers.map(({ readerId, widths }) => ({ key: readerId, label: teller.nameOf(readerId), widths }))} units={teller.units} />
    </>
  )
}

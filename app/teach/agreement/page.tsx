import type { Metadata } from 'next'
import { agreementAnswer, widthWords } from '@/lib/reports/agreement-words'
import { AgreementNotes, WIDTH_NOTE } from '@/app/_components/agreement/agreement-notes'
import { LeaningList } from '@/app/_components/agreement/leaning-list'
import { PairDetails } from '@/app/_components/agreement/pair-details'
import { RuleAgreement } from '@/app/_components/agreement/rule-agreement'
import { EmptyState } from '@/app/_components/ui/empty-state'
import { LinkButton } from '@/app/_components/ui/link-button'
import { PageHead } from '@/app/_components/ui/page-head'
import { requireRole } from '@/app/_server/auth/require-role'
import { MOST_COMPARED, ownAgreement, type AgreementView } from '@/app/_server/views/agreement'
import { taughtClasses } from '@/app/_server/views/class-board'

export async function generateMetadata(): Promise<Metadata> {
  await requireRole('instructor')
  return { title: 'Your eye and the others’' }
}

/** An instructor's own looks beside those of whoever read the same coupons. */
export default async function OwnAgreementPage() {
  const viewer = await requireRole('instructor')
  const [view, classes] = await Promise.all([ownAgreement(viewer), taughtClasses(viewer)])
  const { all } = view.report
  const [answer] = all.coupons === 0 ? [] : agreementAnswer(all, 'You and another instructor', 'you')
  return (
    <div className="grid gap-10">
      <PageHead title="Your eye and the others’" lead={answer} />
      {all.coupons === 0 ? (
        <EmptyState title="No coupon has been read by you and another instructor yet">
          <p>Some coupons are read by a second instructor who is not told. Once you and somebody else have read the same ones, how alike you judge is shown here. No grade changes by it.</p>
        </EmptyState>
      ) : <Found view={view} />}
      <section className="grid gap-3">
        <h2 className="text-2xl">How students see their own welds</h2>
        <ul className="flex flex-wrap gap-2">
          {classes.map(({ record }) => <li key={record.id}><LinkButton href={`/teach/classes/${record.id}/eyes`}>{record.name}, {record.term.name}</LinkButton></li>)}
        </ul>
      </section>
      <section className="grid gap-3">
        <h2 className="text-2xl">Measuring the same coupons more than once</h2>
        <div><LinkButton href="/teach/studies">Gauge studies</LinkButton></div>
      </section>
      {all.coupons > 0 && <AgreementNotes capped={view.capped ? MOST_COMPARED : null} more={[WIDTH_NOTE, 'You see only coupons that you read yourself. The coordinator sees all of them.']} />}
    </div>
  )
}

function Found({ view: { report, teller, leanings } }: { readonly view: AgreementView }) {
  const { all, pairs, readers } = report
  const [, ...more] = agreementAnswer(all, 'You and another instructor', 'you')
  return (
    <>
      {more.length > 0 && <div className="-mt-6 grid max-w-prose gap-2">{more.map((sentence) => <p key={sentence}>{sentence}</p>)}</div>}
      <LeaningList title="Where you part from others one way" {...leanings} none="You part from the others no one way, as far as these coupons can tell. It takes six coupons parted upon." />
      <RuleAgreement title="You and the others, rule by rule" rules={all.rules} sides={['you', 'the other']} />
      <section className="grid gap-2">
        <h2 className="text-2xl">Measured widths</h2>
        <div className="max-w-prose">{readers.flatMap(({ widths }) => widthWords(widths, 'You', 'the others', teller.units)).map((sentence) => <p key={sentence}>{sentence}</p>)}</div>
      </section>
      <section className="grid gap-3">
        <h2 className="text-2xl">With each of them</h2>
        {pairs.map((pair) => <PairDetails key={pair.readerIds.join()} pair={pair} teller={teller} />)}
      </section>
    </>
  )
}

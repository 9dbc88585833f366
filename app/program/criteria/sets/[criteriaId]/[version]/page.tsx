import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { ChangesList } from '@/app/_components/criteria/changes-list'
import { RulesInWords } from '@/app/_components/criteria/rules-in-words'
import { LinkButton } from '@/app/_components/ui/link-button'
import { Notice } from '@/app/_components/ui/notice'
import { PageHead } from '@/app/_components/ui/page-head'
import { requireRole } from '@/app/_server/auth/require-role'
import { criteriaSetView } from '@/app/_server/views/criteria-set'
import { BeginForm } from '../../../begin-form'
import { NextVersionButton } from '../../../next-version-button'
import { RetireButton } from '../../../retire-button'
import { setAddress } from '../../../set-address'

export const metadata: Metadata = { title: 'Criteria in words' }

type Props = { params: Promise<{ criteriaId: string; version: string }> }

/** One version of a set: what each rule allows, by whose word, and how much it counts. */
export default async function CriteriaSetPage({ params }: Props) {
  const viewer = await requireRole('coordinator')
  const { criteriaId, version } = await params
  if (!/^[1-9]\d{0,5}$/.test(version)) notFound()
  const view = (await criteriaSetView(viewer, decodeURIComponent(criteriaId), Number(version))) ?? notFound()
  const { words, own, newest, exercises, retired, from, changes } = view
  const value = `${view.id} ${view.version}`
  return (
    <div className="grid gap-8">
      <PageHead
        eyebrow={`Version ${view.version} · ${words.edition}`} title={words.title}
        lead={`An accepted coupon gets a mark of ${words.passMark} or more. ${exercises === 0 ? 'No exercise is judged by this version now.' : exercises === 1 ? 'One exercise is judged by this version now.' : `${exercises} exercises are judged by this version now.`}`}
        aside={<><LinkButton href="/program/criteria">All criteria</LinkButton>{own && view.version === newest && <NextVersionButton criteriaId={view.id} title={words.title} />}</>}
      />
      {view.version < newest && (
        <Notice kind="info" word="There is a newer version"><LinkButton href={setAddress(view.id, newest)}>Read version {newest}</LinkButton></Notice>
      )}
      {retired && <Notice kind="info" word="Retired">This version is no longer offered to exercises. Those that use it go on with it, and what it judged stays judged.</Notice>}
      {from && <ChangesList from={from} changes={changes} />}
      <RulesInWords words={words} />
      {own && (
        <section aria-labelledby="offer" className="grid gap-3">
          <h2 id="offer" className="text-2xl">{retired ? 'Offer it again' : 'Retire it'}</h2>
          <p className="max-w-prose">{retired ? 'Exercises can be set to it again.' : 'It is no longer offered where criteria are chosen for an exercise. It stays readable, exercises that use it go on with it, and you can offer it again.'}</p>
          <RetireButton criteriaId={view.id} version={view.version} retired={retired} />
        </section>
      )}
      <section aria-labelledby="copy" className="grid gap-4">
        <h2 id="copy" className="text-2xl">Begin a set of your own with it</h2>
        <BeginForm units={words.units === 'in' ? 'us' : 'si'} from={value} sets={[{ value, label: `${words.title} (version ${view.version})` }]} />
      </section>
      <p className="max-w-prose text-base text-ink-2">A practice record. The governing code edition, the local authority and a qualified inspector decide.</p>
    </div>
  )
}

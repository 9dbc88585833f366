import type { Metadata } from 'next'
import { SetList } from '@/app/_components/criteria/set-list'
import { LinkButton } from '@/app/_components/ui/link-button'
import { PageHead } from '@/app/_components/ui/page-head'
import { requireRole } from '@/app/_server/auth/require-role'
import { criteriaList } from '@/app/_server/views/criteria-list'
import { BeginForm } from './begin-form'
import { NextVersionButton } from './next-version-button'
import { setAddress } from './set-address'

export const metadata: Metadata = { title: 'Acceptance criteria' }

/** Every set of rules that coupons can be judged by, what is being written, and how to begin one. */
export default async function CriteriaPage() {
  const viewer = await requireRole('coordinator')
  const { sets, drafts } = await criteriaList(viewer)
  const own = sets.filter((set) => set.own)
  return (
    <div className="grid gap-10">
      <PageHead title="Acceptance criteria" lead="What coupons are judged by. A published version never changes; an exercise keeps its version until somebody chooses another for it." />
      {drafts.length > 0 && (
        <section aria-labelledby="drafts" className="grid gap-3">
          <h2 id="drafts" className="text-2xl">Being written</h2>
          <ul className="divide-y divide-line border-y border-line">
            {drafts.map(({ id, title, saved, nextOf }) => (
              <li key={id} className="flex flex-wrap items-center justify-between gap-3 py-3">
                <div className="min-w-0">
                  <h3 className="font-head text-xl leading-tight font-semibold">{title}</h3>
                  <p className="text-base text-ink-2">{nextOf && `The next version of ${nextOf}. `}{saved}</p>
                </div>
                <LinkButton href={`/program/criteria/drafts/${id}`} aria-label={`Go on with ${title}`}>Go on</LinkButton>
              </li>
            ))}
          </ul>
        </section>
      )}
      <section aria-labelledby="own" className="grid gap-3">
        <h2 id="own" className="text-2xl">The program’s own</h2>
        {own.length === 0 ? <p>None yet. Begin one below: most begin as a copy with one limit changed.</p> : <SetList sets={own} address={setAddress} aside={({ id, title }) => <NextVersionButton criteriaId={id} title={title} />} />}
      </section>
      <section aria-labelledby="shipped" className="grid gap-3">
        <h2 id="shipped" className="text-2xl">Ready to use</h2>
        <SetList sets={sets.filter((set) => !set.own)} address={setAddress} />
      </section>
      <section aria-labelledby="begin" className="grid gap-4">
        <h2 id="begin" className="text-2xl">Begin a set</h2>
        <BeginForm
          units={viewer.units === 'in' ? 'us' : 'si'}
          sets={sets.flatMap(({ id, title, versions }) => (versions[0] ? [{ value: `${id} ${versions[0].version}`, label: `${title} (version ${versions[0].version})` }] : []))}
        />
      </section>
      <p className="max-w-prose text-base text-ink-2">A practice record. The governing code edition, the local authority and a qualified inspector decide.</p>
    </div>
  )
}

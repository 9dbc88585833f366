import type { Metadata } from 'next'
import { SetList } from '@/app/_components/criteria/set-list'
import { PageHead } from '@/app/_components/ui/page-head'
import { requireRole } from '@/app/_server/auth/require-role'
import { criteriaList } from '@/app/_server/views/criteria-list'
import { readAddress } from './read-address'

export const metadata: Metadata = { title: 'Acceptance criteria' }

/** Every set of rules that coupons of the program are judged by, for an instructor to read. */
export default async function CriteriaPage() {
  const viewer = await requireRole('instructor')
  const { sets } = await criteriaList(viewer)
  const own = sets.filter((set) => set.own)
  return (
    <div className="grid gap-10">
      <PageHead title="Acceptance criteria" lead="What coupons are judged by. An exercise is set to one of these in its own form and keeps that version; coordinators write new ones." />
      {own.length > 0 && (
        <section aria-labelledby="own" className="grid gap-3">
          <h2 id="own" className="text-2xl">The program’s own</h2>
          <SetList sets={own} address={readAddress} />
        </section>
      )}
      <section aria-labelledby="shipped" className="grid gap-3">
        <h2 id="shipped" className="text-2xl">Ready to use</h2>
        <SetList sets={sets.filter((set) => !set.own)} address={readAddress} />
      </section>
      <p className="max-w-prose text-base text-ink-2">A practice record. The governing code edition, the local authority and a qualified inspector decide.</p>
    </div>
  )
}

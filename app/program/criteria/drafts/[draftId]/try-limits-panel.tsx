'use client'

import Link from 'next/link'
import { useState } from 'react'
import type { DraftCriteria } from '@/lib/criteria/draft/draft'
import { Button } from '@/app/_components/ui/button'
import { Notice } from '@/app/_components/ui/notice'
import { Select, type Choice } from '@/app/_components/ui/select'
import { Table } from '@/app/_components/ui/table'
import { useHydrated } from '@/app/_components/use-hydrated'
import { tryLimits } from '../../actions'
import type { BoxProblems } from './box-problems'
import { underRules } from './use-preview'

type Told = Extract<Extract<Awaited<ReturnType<typeof tryLimits>>, { ok: true }>['value'], { ok: true }>

type TryLimitsPanelProps = { readonly document: DraftCriteria; readonly coupons: readonly Choice[]; readonly onProblems: (problems: BoxProblems) => void }

/** Judges the last coupons again by what stands in the boxes. */
export function TryLimitsPanel({ document, coupons, onProblems }: TryLimitsPanelProps) {
  const [of, setOf] = useState(coupons[0]?.value ?? '')
  const [busy, setBusy] = useState(false)
  const [told, setTold] = useState<{ readonly found: Told; readonly document: DraftCriteria; readonly of: string } | null>(null)
  const [problem, setProblem] = useState<string | null>(null)
  const ready = useHydrated()

  async function ask(): Promise<void> {
    if (busy) return
    setBusy(true)
    setProblem(null)
    try {
      const [what, id = ''] = of.split(' ')
      const answer = await tryLimits({ document, of: what === 'exercise' ? { exerciseId: id } : { criteriaId: id } })
      if (!answer.ok) {
        setProblem(answer.message)
        onProblems(underRules(answer.fields))
      } else if (!answer.value.ok) {
        setProblem('The boxes marked must be filled in first.')
        onProblems(answer.value.problems)
      } else setTold({ found: answer.value, document, of })
    } catch {
      setProblem('It did not get through. Check the connection and try again.')
    } finally {
      setBusy(false)
    }
  }

  return (
    <section aria-labelledby="try" className="grid gap-4">
      <h2 id="try" className="text-2xl">What would change</h2>
      <p className="max-w-prose">Judges up to the last 80 coupons again by what stands in the boxes. Nothing about the coupons is changed.</p>
      {coupons.length === 0 ? <p>The program has no exercises yet.</p> : (
        <div className="flex flex-wrap items-end gap-2">
          <div className="min-w-0 max-w-full grow sm:max-w-xl"><Select label="Coupons of" value={of} choices={coupons} onChange={(event) => setOf(event.target.value)} /></div>
          <Button onClick={() => void ask()} disabled={!ready} aria-disabled={busy || undefined}>{busy ? 'Judging' : 'Judge them again'}</Button>
        </div>
      )}
      {problem && <Notice kind="problem" word="Not judged" live>{problem}</Notice>}
      <div role="status" className="grid gap-3">
        {told && <p className="max-w-prose text-lg font-bold">{told.found.sentence}</p>}
        {told && told.found.ways.length > 0 && <ul className="list-disc pl-5">{told.found.ways.map((way) => <li key={way}>{way}</li>)}</ul>}
        {told?.found.notes.map((note) => <p key={note} className="max-w-prose">{note}</p>)}
        {told && (told.document !== document || told.of !== of) && <p className="max-w-prose">The boxes or the choice have changed since; judge again for the present answer.</p>}
      </div>
      {told && told.found.coupons.length > 0 && (
        <Table
          caption="Coupons that would change verdict" columns={[{ key: 'coupon', head: 'Coupon' }, { key: 'before', head: 'Now' }, { key: 'after', head: 'With these limits' }, { key: 'why', head: 'Why' }]}
          rows={told.found.coupons.map(({ couponId, name, before, after, why }) => ({
            key: couponId, cells: [<Link key="name" href={`/program/criteria/coupons/${couponId}`} className="inline-flex min-h-12 items-center underline">{name}</Link>, before, after, why],
          }))}
        />
      )}
    </section>
  )
}

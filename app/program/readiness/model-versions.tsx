'use client'

import { useRouter } from 'next/navigation'
import { useState } from 'react'
import { readinessModels } from '@/lib/language/readiness-models'
import { say, type Locale } from '@/lib/language/say'
import { Button } from '@/app/_components/ui/button'
import { Notice } from '@/app/_components/ui/notice'
import { useSentForm } from '@/app/_components/use-sent-form'
import { adoptReadinessModel } from '@/app/program/actions'

type Proposal = { readonly version: string; readonly head: string; readonly facts: readonly string[]; readonly inUse: boolean }
type ModelVersionsProps = {
  readonly view: { readonly inUse: string; readonly what: string; readonly proposals: readonly Proposal[]; readonly shipped: string | null }
  readonly locale: Locale
}

/** The readiness model in use, and what a refit proposed instead: adopted by a button that asks first. */
export function ModelVersions({ view, locale }: ModelVersionsProps) {
  const told = (key: keyof typeof readinessModels.en, values?: Record<string, string | number>): string => say(readinessModels, locale, key, values)
  const router = useRouter()
  const [asked, setAsked] = useState<string | null>(null)
  const [renewed, setRenewed] = useState<number | null>(null)
  const { onSubmit, busy, refused } = useSentForm(adoptReadinessModel, ({ standings }) => {
    setAsked(null)
    setRenewed(standings)
    router.refresh()
  }, told('failed'))

  const choice = (version: string, back: boolean) => (
    <div className="grid gap-3">
      <div><Button aria-expanded={asked === version} onClick={() => setAsked(asked === version ? null : version)}>{told(back ? 'back' : 'adopt', { version })}</Button></div>
      {asked === version && (
        <form method="post" onSubmit={onSubmit} className="grid max-w-prose gap-3 border-l-[6px] border-ink bg-plate p-4">
          <input type="hidden" name="version" value={version} />
          <p className="font-head text-xl leading-tight font-semibold">{told(back ? 'sureBack' : 'sureAdopt', { version })}</p>
          <p>{told('consequence')}</p>
          <div className="flex flex-wrap gap-3">
            <Button type="submit" kind="primary" aria-disabled={busy || undefined}>{told(busy ? 'working' : back ? 'yesBack' : 'yes')}</Button>
            <Button onClick={() => setAsked(null)}>{told('no')}</Button>
          </div>
        </form>
      )}
    </div>
  )

  return (
    <section className="grid gap-4">
      <h2 className="text-2xl">{told('head')}</h2>
      {refused && <Notice kind="problem" word={told('notAdopted')} live>{refused.message}</Notice>}
      {renewed !== null && !refused && !busy && <Notice kind="ok" word={told('adopted')} live>{told('adoptedText', { n: renewed })}</Notice>}
      <p className="max-w-prose text-lg">{view.inUse}</p>
      {view.shipped !== null && choice(view.shipped, true)}
      <p className="max-w-prose">{view.what}</p>
      <h3 className="text-xl">{told('proposals')}</h3>
      {view.proposals.length === 0 ? <p>{told('none')}</p> : (
        <ul className="grid gap-6">
          {view.proposals.map(({ version, head, facts, inUse }) => (
            <li key={version} className="grid max-w-prose gap-3">
              <p className="font-bold">{inUse ? `${head} (${told('isInUse')})` : head}</p>
              <ul className="grid list-disc gap-1 pl-6">{facts.map((fact) => <li key={fact}>{fact}</li>)}</ul>
              {!inUse && choice(version, false)}
            </li>
          ))}
        </ul>
      )}
    </section>
  )
}

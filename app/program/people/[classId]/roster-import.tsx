'use client'

import { useRouter } from 'next/navigation'
import { useState, type ChangeEvent } from 'react'
import type { PlannedLine } from '@/lib/interchange/roster-plan'
import { rosterText } from '@/lib/interchange/roster-text'
import { Button } from '@/app/_components/ui/button'
import { Field } from '@/app/_components/ui/field'
import { Notice } from '@/app/_components/ui/notice'
import { TextArea } from '@/app/_components/ui/text-area'
import { useHydrated } from '@/app/_components/use-hydrated'
import { bringRoster, checkRoster } from '../actions'
import { RosterPlanTable } from './roster-plan-table'

type Plan = { readonly lines: readonly PlannedLine[]; readonly ignoredColumns: readonly string[]; readonly shown: string }
type Said = { readonly kind: 'ok' | 'problem' | 'info'; readonly word: string; readonly text: string }

/** 2 MB holds 5,000 lines in the widest encoding many times over. */
const MOST_BYTES = 2_000_000
const doing = (plan: Plan): number => plan.lines.filter(({ outcome }) => outcome === 'added' || outcome === 'changed').length
const students = (n: number): string => (n === 1 ? '1 student' : `${n} students`)

/** A roster, pasted or from a file: first what it would do, then doing it. */
export function RosterImport({ classId }: { readonly classId: string }) {
  const router = useRouter()
  const hydrated = useHydrated()
  const [text, setText] = useState('')
  const [plan, setPlan] = useState<Plan | null>(null)
  const [said, setSaid] = useState<Said | null>(null)
  const [fault, setFault] = useState<string | null>(null)
  const [busy, setBusy] = useState(false)

  function change(next: string): void {
    setText(next)
    setPlan(null)
    setFault(null)
    setSaid(null)
  }

  async function choose(event: ChangeEvent<HTMLInputElement>): Promise<void> {
    const file = event.target.files?.[0]
    if (!file) return
    if (file.size > MOST_BYTES) setFault('This file is larger than 2 MB. Split it.')
    else change(rosterText(new Uint8Array(await file.arrayBuffer())))
  }

  async function send(work: () => Promise<void>): Promise<void> {
    if (busy) return
    setBusy(true)
    setSaid(null)
    setFault(null)
    try {
      await work()
    } catch {
      setSaid({ kind: 'problem', word: 'No answer', text: 'Check the connection, then check the file again: a roster comes in whole or not at all.' })
      setPlan(null)
    } finally {
      setBusy(false)
    }
  }

  const check = (): Promise<void> => send(async () => {
    const answer = await checkRoster({ classId, text })
    setPlan(answer.ok ? answer.value : null)
    if (!answer.ok) setFault(answer.fields['text'] ?? answer.message)
  })

  const bring = (shown: Plan): Promise<void> => send(async () => {
    const answer = await bringRoster({ classId, text, shown: shown.shown })
    if (!answer.ok) {
      setPlan(null)
      setSaid({ kind: 'problem', word: 'Not imported', text: answer.message })
    } else if (!answer.value.imported) {
      setPlan(answer.value.plan)
      setSaid({ kind: 'info', word: 'Not imported yet', text: 'The people of this class changed since the check. Below is what the file would do now.' })
    } else {
      change('')
      setSaid({ kind: 'ok', word: 'Imported', text: `${students(doing(answer.value.plan))} added or changed.` })
      router.refresh()
    }
  })

  const count = plan ? doing(plan) : 0
  return (
    <section className="grid gap-4">
      <h2 className="text-2xl">Bring in a roster</h2>
      <p className="max-w-prose">
        The first line names the columns: sign-in name, given name, family name and, if you have them, booth. Commas, semicolons and tabs all do. Nobody leaves the class because a file does not name them.
        New students have no password yet: their instructor makes a first one on the student’s page, or you do on theirs.
      </p>
      <Field label="A file of your computer" hint="It is read into the box below, where you can mend it.">
        {(wiring) => <input type="file" accept=".csv,.txt,.tsv,text/csv,text/plain" disabled={!hydrated} onChange={(event) => void choose(event)} {...wiring} className="min-h-12 w-full max-w-full py-2" />}
      </Field>
      <TextArea label="Or paste the lines" rows={8} value={text} spellCheck={false} autoComplete="off" error={fault} onChange={(event) => change(event.target.value)} />
      <div className="flex flex-wrap gap-2">
        <Button disabled={!hydrated || busy || text.trim() === ''} onClick={() => void check()}>Check the roster</Button>
        {plan && count > 0 && <Button kind="primary" disabled={busy} onClick={() => void bring(plan)}>{`Bring in ${students(count)}`}</Button>}
      </div>
      {said && <Notice kind={said.kind} word={said.word} live>{said.text}</Notice>}
      {plan && <RosterPlanTable lines={plan.lines} ignoredColumns={plan.ignoredColumns} />}
    </section>
  )
}

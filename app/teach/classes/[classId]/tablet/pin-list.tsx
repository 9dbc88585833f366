'use client'

import { useState } from 'react'
import { Button } from '@/app/_components/ui/button'
import { Notice } from '@/app/_components/ui/notice'
import { useHydrated } from '@/app/_components/use-hydrated'
import { newPin } from './actions'

type Student = { readonly id: string; readonly name: string; readonly booth: number | null; readonly hasPin: boolean }

/** The students of the class, each with the way to a new PIN. */
export function PinList({ students }: { readonly students: readonly Student[] }) {
  if (students.length === 0) return <p className="text-ink-2">No students yet.</p>
  return <ul className="divide-y divide-line border-y border-line">{students.map((student) => <PinLine key={student.id} {...student} />)}</ul>
}

/** A new PIN ends the old one and signs the student out of shared tablets, so one that replaces another asks first. */
function PinLine({ id, name, booth, hasPin }: Student) {
  const hydrated = useHydrated()
  const [asked, setAsked] = useState(false)
  const [busy, setBusy] = useState(false)
  const [told, setTold] = useState<{ ok: true; pin: string } | { ok: false; message: string } | null>(null)
  const has = hasPin || told?.ok === true

  async function make(): Promise<void> {
    setBusy(true)
    try {
      const result = await newPin({ studentId: id })
      setTold(result.ok ? { ok: true, pin: result.value.pin } : { ok: false, message: result.message })
    } catch {
      setTold({ ok: false, message: 'It did not get through. Check the connection and try again.' })
    }
    setAsked(false)
    setBusy(false)
  }

  return (
    <li className="grid gap-3 py-3">
      <div className="flex flex-wrap items-center justify-between gap-3">
        <p><strong>{name}</strong><span className="block text-base text-ink-2">{[booth === null ? 'no booth' : `booth ${booth}`, has ? 'has a PIN' : 'no PIN yet'].join(', ')}</span></p>
        <div className="flex flex-wrap gap-2">
          {has && !asked
            ? <Button disabled={!hydrated} aria-label={`New PIN for ${name}`} onClick={() => setAsked(true)}>New PIN</Button>
            : <Button disabled={!hydrated} aria-label={`${has ? 'End the old PIN and make one' : 'Make a PIN'} for ${name}`} aria-disabled={busy || undefined} onClick={() => void (busy || make())}>{has ? 'End the old PIN and make one' : 'Make a PIN'}</Button>}
          {asked && <Button onClick={() => setAsked(false)}>Keep the PIN</Button>}
        </div>
      </div>
      {told?.ok === true && <Notice kind="ok" word={`PIN of ${name}`} live><p className="figures text-2xl">{told.pin}</p><p>Read it out now: it is shown once.</p></Notice>}
      {told?.ok === false && <Notice kind="problem" word="No new PIN" live>{told.message}</Notice>}
    </li>
  )
}

'use client'

import { useState } from 'react'
import { Button } from '@/app/_components/ui/button'
import { Notice } from '@/app/_components/ui/notice'
import { Select, type Choice } from '@/app/_components/ui/select'
import { useHydrated } from '@/app/_components/use-hydrated'
import { useChange } from '../../[classId]/use-change'
import { addTeacher, removeTeacher } from '../../actions'

type Props = {
  readonly instructorId: string
  readonly name: string
  readonly teaches: readonly { readonly classId: string; readonly label: string; readonly archived: boolean }[]
  readonly others: readonly Choice[]
  /** A disabled account is given no class. */
  readonly disabled: boolean
}

/** The classes an instructor teaches, and the way to one more. */
export function TeachingPanel({ instructorId, name, teaches, others, disabled }: Props) {
  const hydrated = useHydrated()
  const { busy, problem, change } = useChange()
  const [picked, setPicked] = useState('')
  const chosen = others.some(({ value }) => value === picked) ? picked : (others[0]?.value ?? '')
  const off = !hydrated || busy
  return (
    <section aria-labelledby="teaches" className="grid gap-3">
      <h2 id="teaches" className="text-2xl">Teaches</h2>
      {problem && <Notice kind="problem" word="Not changed" live>{problem}</Notice>}
      {teaches.length === 0 ? <p>No class yet.</p> : (
        <ul className="grid gap-2">
          {teaches.map(({ classId, label, archived }) => (
            <li key={classId} className="flex flex-wrap items-center gap-3">
              <span className="min-w-48">{label}{archived && ' (archived)'}</span>
              {!archived && <Button disabled={off} aria-label={`Take ${name} off ${label}`} onClick={() => void change(() => removeTeacher({ classId, instructorId }))}>Take off this class</Button>}
            </li>
          ))}
        </ul>
      )}
      {!disabled && others.length > 0 && (
        <div className="flex flex-wrap items-end gap-2">
          <Select label="One more class" choices={others} value={chosen} onChange={(event) => setPicked(event.target.value)} />
          <Button disabled={off} onClick={() => void change(() => addTeacher({ classId: chosen, instructorId }))}>Add to this class</Button>
        </div>
      )}
    </section>
  )
}

'use client'

import { useState } from 'react'
import { Button } from '@/app/_components/ui/button'
import { Notice } from '@/app/_components/ui/notice'
import { Select } from '@/app/_components/ui/select'
import { useHydrated } from '@/app/_components/use-hydrated'
import { addTeacher, removeTeacher } from '../actions'
import { useChange } from './use-change'

type Teacher = { readonly id: string; readonly name: string }
type Props = { readonly classId: string; readonly teachers: readonly Teacher[]; readonly others: readonly Teacher[] }

/** Who teaches a class. */
export function TeacherPanel({ classId, teachers, others }: Props) {
  const hydrated = useHydrated()
  const { busy, problem, change } = useChange()
  const [picked, setPicked] = useState('')
  // After a change the one picked may be a teacher already: then the list's first stands.
  const chosen = others.some(({ id }) => id === picked) ? picked : (others[0]?.id ?? '')
  const off = !hydrated || busy
  return (
    <section className="grid gap-3">
      <h2 className="text-2xl">Instructors</h2>
      {problem && <Notice kind="problem" word="Not changed" live>{problem}</Notice>}
      <ul className="grid gap-2">
        {teachers.map(({ id, name }) => (
          <li key={id} className="flex flex-wrap items-center gap-3">
            <span className="min-w-48">{name}</span>
            <Button disabled={off} aria-label={`Take ${name} off this class`} onClick={() => void change(() => removeTeacher({ classId, instructorId: id }))}>Take off this class</Button>
          </li>
        ))}
      </ul>
      {others.length > 0 && (
        <div className="flex flex-wrap items-end gap-2">
          <Select label="One more instructor" choices={others.map(({ id, name }) => ({ value: id, label: name }))} value={chosen} onChange={(event) => setPicked(event.target.value)} />
          <Button disabled={off} onClick={() => void change(() => addTeacher({ classId, instructorId: chosen }))}>Add to this class</Button>
        </div>
      )}
    </section>
  )
}

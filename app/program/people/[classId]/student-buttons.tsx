'use client'

import { useState } from 'react'
import { Button } from '@/app/_components/ui/button'
import { FieldError } from '@/app/_components/ui/field'
import { Select, type Choice } from '@/app/_components/ui/select'
import { useHydrated } from '@/app/_components/use-hydrated'
import { move, readmit, withdraw } from '../actions'
import { useChange } from './use-change'

type Props = { readonly classId: string; readonly studentId: string; readonly name: string; readonly withdrawn: boolean; readonly others: readonly Choice[] }

/** Withdraw, readmit or move one student. Moving asks where to. */
export function StudentButtons({ classId, studentId, name, withdrawn, others }: Props) {
  const hydrated = useHydrated()
  const { busy, problem, change } = useChange()
  const [moving, setMoving] = useState(false)
  const [toClassId, setTo] = useState(others[0]?.value ?? '')
  const off = !hydrated || busy
  const errorId = `change-${studentId}`
  return (
    <div className="grid gap-2">
      {moving && <Select label={`Move ${name} to`} choices={others} value={toClassId} onChange={(event) => setTo(event.target.value)} />}
      <div className="flex flex-wrap gap-2">
        {withdrawn ? <Button disabled={off} aria-label={`Readmit ${name}`} onClick={() => void change(() => readmit({ classId, studentId }))}>Readmit</Button> : moving ? (
          <>
            <Button kind="primary" disabled={off} aria-label={`Move ${name} now`} onClick={() => void change(() => move({ classId, studentId, toClassId }))}>Move</Button>
            <Button onClick={() => setMoving(false)} aria-label={`Do not move ${name}`}>Keep here</Button>
          </>
        ) : (
          <>
            <Button disabled={off} aria-label={`Withdraw ${name}`} onClick={() => void change(() => withdraw({ classId, studentId }))}>Withdraw</Button>
            {others.length > 0 && <Button disabled={off} aria-label={`Move ${name}`} onClick={() => setMoving(true)}>Move</Button>}
          </>
        )}
      </div>
      <div aria-live="polite">{problem && <FieldError id={errorId}>{problem}</FieldError>}</div>
    </div>
  )
}

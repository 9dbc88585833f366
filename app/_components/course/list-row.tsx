'use client'

import { useEffect, useRef, useState } from 'react'
import { LinkButton } from '../ui/link-button'
import { Select, type Choice } from '../ui/select'
import type { CourseActions } from './course-actions'
import { OneStep } from './one-step'

type Props = {
  readonly classId: string
  readonly exerciseId: string
  readonly title: string
  readonly place: number
  /** How many the list has. */
  readonly of: number
  readonly opensAfterId: string
  readonly others: readonly Choice[]
  /** The address of the list. */
  readonly here: string
  /** The heading that takes the focus when this row is gone. */
  readonly listId: string
  readonly actions: CourseActions
}

/** One exercise of the list: what it waits for, and the ways to move, edit and take it off. */
export function ListRow({ classId, exerciseId, title, place, of, opensAfterId, others, here, listId, actions }: Props) {
  const key = { classId, exerciseId }
  const row = useRef<HTMLLIElement>(null)
  const moving = useRef<'up' | 'down' | null>(null)
  const [movedTo, setMovedTo] = useState<number | null>(null)
  const [chosen, setChosen] = useState<string | null>(null)

  // A row that changes place loses the focus, and at an end of the list the button with it.
  useEffect(() => {
    if (moving.current === null) return
    const target = row.current?.querySelector<HTMLElement>(`[aria-label^="Move ${moving.current}"]`) ?? row.current?.querySelector<HTMLElement>('[aria-label^="Move"]')
    target?.focus()
    moving.current = null
    setMovedTo(place)
  }, [place])

  async function move(to: 'up' | 'down') {
    moving.current = to
    const answer = await actions.move({ ...key, to })
    if (!answer.ok) moving.current = null
    return answer
  }
  async function choose(after: string) {
    const answer = await actions.chooseOpensAfter({ ...key, opensAfterId: after })
    if (answer.ok) setChosen(after)
    return answer
  }
  async function remove() {
    const answer = await actions.remove(key)
    if (answer.ok) document.getElementById(listId)?.focus()
    return answer
  }
  const after = others.find(({ value }) => value === opensAfterId)
  const opens = after ? `It opens when ready in ${after.label}.` : 'It is open from the start.'
  return (
    <li ref={row} className="grid gap-3 py-4">
      <h3 className="font-head text-xl leading-tight font-semibold">{place}. {title}</h3>
      <p role="status" className="sr-only">{movedTo === place && `${title} is number ${place} of ${of} now.`}</p>
      <div className="flex flex-wrap items-end gap-2">
        <LinkButton href={`${here}/${exerciseId}`} aria-label={`Edit ${title}`}>Edit</LinkButton>
        {place > 1 && <OneStep label="Move up" name={`Move up ${title}`} send={() => move('up')} />}
        {place < of && <OneStep label="Move down" name={`Move down ${title}`} send={() => move('down')} />}
        <OneStep label="Take off" name={`Take off ${title}`} danger send={remove} />
      </div>
      <OneStep label="Set" name={`Set what opens ${title}`} send={(fields) => choose(fields['opensAfterId'] ?? '')}>
        {(error) => <Select key={opensAfterId} label="Opens when ready in" name="opensAfterId" defaultValue={opensAfterId} choices={[{ value: '', label: 'Open from the start' }, ...others]} error={error('opensAfterId')} />}
      </OneStep>
      <p role="status" className="text-base empty:hidden">{chosen === opensAfterId && `Saved. ${opens}`}</p>
    </li>
  )
}

'use client'

import { LinkButton } from '../ui/link-button'
import { Select, type Choice } from '../ui/select'
import type { CourseActions } from './course-actions'
import { OneStep } from './one-step'

type Props = {
  readonly classId: string
  readonly exerciseId: string
  readonly title: string
  readonly place: number
  readonly last: boolean
  readonly opensAfterId: string
  readonly others: readonly Choice[]
  /** The address of the list. */
  readonly here: string
  readonly actions: CourseActions
}

/** One exercise of the list: what it waits for, and the ways to move, edit and take it off. */
export function ListRow({ classId, exerciseId, title, place, last, opensAfterId, others, here, actions }: Props) {
  const key = { classId, exerciseId }
  return (
    <li className="grid gap-3 py-4">
      <h3 className="font-head text-xl leading-tight font-semibold">{place}. {title}</h3>
      <div className="flex flex-wrap items-end gap-2">
        <LinkButton href={`${here}/${exerciseId}`} aria-label={`Edit ${title}`}>Edit</LinkButton>
        {place > 1 && <OneStep label="Move up" name={`Move up ${title}`} send={() => actions.move({ ...key, to: 'up' })} />}
        {!last && <OneStep label="Move down" name={`Move down ${title}`} send={() => actions.move({ ...key, to: 'down' })} />}
        <OneStep label="Take off" name={`Take off ${title}`} danger send={() => actions.remove(key)} />
      </div>
      <OneStep label="Set" name={`Set what opens ${title}`} send={(fields) => actions.chooseOpensAfter({ ...key, opensAfterId: fields['opensAfterId'] ?? '' })}>
        {(error) => <Select label="Opens when ready in" name="opensAfterId" defaultValue={opensAfterId} choices={[{ value: '', label: 'Open from the start' }, ...others]} error={error('opensAfterId')} />}
      </OneStep>
    </li>
  )
}

'use client'

import { AskFirst } from '@/app/_components/ask-first'
import { changeRole } from '../../actions'

type Props = { readonly personId: string; readonly name: string; readonly instructor: boolean; readonly coordinator: boolean; readonly self: boolean }

/** The staff's roles of an account. Students become so by a roster or a class code. */
export function RolesPanel({ personId, name, instructor, coordinator, self }: Props) {
  const set = (role: 'instructor' | 'coordinator', held: boolean) => () => changeRole({ personId, role, held })
  return (
    <section aria-labelledby="roles" className="grid gap-4">
      <h2 id="roles" className="text-2xl">Roles of staff</h2>
      <AskFirst
        label={instructor ? 'Take the instructor’s role' : 'Make an instructor'} keep="Leave the roles"
        sure={instructor ? `${name} is to teach no more` : `${name} is to teach and grade`} send={set('instructor', !instructor)} done={() => DONE}
      />
      {!self && (
        <AskFirst
          label={coordinator ? 'Take the coordinator’s role' : 'Make a coordinator'} keep="Leave the roles"
          sure={coordinator ? `${name} is to look after the program no more` : `${name} is to see everything of the program`} send={set('coordinator', !coordinator)} done={() => DONE}
        />
      )}
    </section>
  )
}

const DONE = { word: 'Changed', text: 'It holds from the next page they open.' }

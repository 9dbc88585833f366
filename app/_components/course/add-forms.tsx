'use client'

import { Select, type Choice } from '../ui/select'
import type { CourseActions } from './course-actions'
import { OneStep } from './one-step'

type Props = { readonly classId: string; readonly program: readonly Choice[]; readonly library: readonly Choice[]; readonly classes: readonly Choice[]; readonly actions: CourseActions }

const CHOOSE: Choice = { value: '', label: 'Choose one' }
const unchosen = { ok: false, code: 'INVALID', message: 'Choose one first.', fields: {} } as const

/** The three ways onto the list: the program's own exercises, the library, and another class's whole list. */
export function AddForms({ classId, program, library, classes, actions }: Props) {
  return (
    <div className="grid gap-5">
      <OneStep label="Add" name="Add the exercise of the program" send={async ({ exerciseId }) => (exerciseId ? actions.add({ classId, exerciseId }) : unchosen)}>
        {() => <Select label="An exercise of the program" name="exerciseId" choices={[CHOOSE, ...program]} />}
      </OneStep>
      <OneStep label="Add" name="Add from the library" send={async ({ key }) => (key ? actions.addFromLibrary({ classId, key }) : unchosen)}>
        {() => <Select label="From the library" name="key" choices={[CHOOSE, ...library]} hint="Settings are starting points: common practice, no source. Tune them to the wire maker’s sheet." />}
      </OneStep>
      <OneStep label="Copy" name="Copy the list" send={async ({ from }) => (from ? actions.copy({ classId, from }) : unchosen)}>
        {() => <Select label="The whole list of another class" name="from" choices={[CHOOSE, ...classes]} hint="What is here already stays as it is." />}
      </OneStep>
    </div>
  )
}

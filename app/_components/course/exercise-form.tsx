'use client'

import { useRouter } from 'next/navigation'
import { useRef, useState } from 'react'
import { SendButton } from '../send-button'
import { Notice } from '../ui/notice'
import { Select, type Choice } from '../ui/select'
import { TextArea } from '../ui/text-area'
import { TextInput } from '../ui/text-input'
import { useSentForm } from '../use-sent-form'
import { CARD_RANGES, JOINT_FACTS, rangeKind, type ExerciseBox, type TypedExercise } from '@/lib/course/typed-exercise'
import type { ExerciseActions, SetupWarning } from './course-actions'
import { FACT_NAMES, GAUGES, JOINT_CHOICES, POLARITY_CHOICES, POSITIONS, PROCESS_CHOICES } from './form-choices'

export type ExerciseFormProps = {
  readonly classId: string
  readonly exerciseId: string
  readonly version: number
  readonly units: 'in' | 'mm'
  readonly values: TypedExercise
  readonly warnings: readonly SetupWarning[]
  readonly criteria: readonly Choice[]
  /** Where its versions are told. */
  readonly versions: string
  readonly actions: ExerciseActions
}

/** The editor of an exercise. Warnings follow what is typed, box by box, and never stop a save; what cannot be read does. */
export function ExerciseForm({ classId, exerciseId, version, units, values, criteria, versions, actions, ...props }: ExerciseFormProps) {
  const router = useRouter()
  const [from, setFrom] = useState(version)
  const [saved, setSaved] = useState<number | null>(null)
  const [warnings, setWarnings] = useState(props.warnings)
  const [unread, setUnread] = useState(false)
  const asked = useRef(0)
  const key = { classId, exerciseId }
  const { onSubmit, busy, refused, error } = useSentForm<{ version: number; warnings: readonly SetupWarning[] }>(
    (fields) => actions.save({ ...fields, ...key }),
    (value) => {
      setFrom(value.version)
      setSaved(value.version)
      setWarnings(value.warnings)
      setUnread(false)
      router.refresh()
    },
    'It did not get through. Check the connection and try again; what you typed is still here.',
  )
  const newer = refused?.code === 'CONFLICT' ? Number(refused.fields['version']) : null

  /** Leaving a box, or choosing, asks again what goes against the wire or rod; only the last answer counts. */
  async function check(form: HTMLFormElement): Promise<void> {
    const mine = (asked.current += 1)
    const fields = Object.fromEntries([...new FormData(form)].map(([name, value]) => [name, typeof value === 'string' ? value : '']))
    const answer = await actions.check({ ...fields, ...key }).catch(() => null)
    if (answer === null || mine !== asked.current) return
    setUnread(!answer.ok)
    if (answer.ok) setWarnings(answer.value.warnings)
  }

  const text = (name: ExerciseBox, label: string, hint?: string) => <TextInput label={label} name={name} defaultValue={values[name]} error={error(name)} {...(hint && { hint })} />
  const choose = (name: ExerciseBox, label: string, choices: readonly Choice[]) => <Select label={label} name={name} defaultValue={values[name]} choices={choices} error={error(name)} />
  return (
    <form
      method="post" onSubmit={onSubmit} noValidate className="grid max-w-4xl gap-8"
      onBlur={(event) => void check(event.currentTarget)} onChange={(event) => { if (event.target instanceof HTMLSelectElement) void check(event.currentTarget) }}
    >
      <fieldset className="grid gap-4 sm:grid-cols-2">
        <legend className="mb-3 font-head text-2xl font-semibold">The weld</legend>
        <div className="sm:col-span-2">{text('title', 'Title')}</div>
        {choose('process', 'Process', PROCESS_CHOICES)}
        {choose('joint', 'Joint', JOINT_CHOICES)}
        {choose('position', 'Position', POSITIONS)}
        {choose('progression', 'Progression', [{ value: '', label: 'Not vertical' }, { value: 'up', label: 'Up' }, { value: 'down', label: 'Down' }])}
        {text('plateThickness', `Plate thickness (${units})`, units === 'in' ? 'As you write it: 3/8, .375, 10 mm' : 'As you write it: 10, 10 mm, 3/8 in')}
        {text('material', 'Base metal')}
        {text('electrodeClass', 'Wire or rod classification')}
        {text('electrodeDiameter', `Wire or rod diameter (${units})`)}
        {text('nominalLeg', `Fillet leg (${units})`, 'Empty for a groove')}
        {text('length', `Weld length (${units})`)}
        {text('passCount', 'Passes')}
        {text('stationCount', 'Stations measured')}
        {choose('gauge', 'Gauge', GAUGES)}
        {choose('criteria', 'Judged by', criteria)}
        {JOINT_FACTS.map((fact) => <div key={fact}>{choose(fact, FACT_NAMES[fact], [{ value: '', label: 'Not said' }, { value: 'yes', label: 'Yes' }, { value: 'no', label: 'No' }])}</div>)}
      </fieldset>
      <fieldset className="grid gap-4">
        <legend className="mb-3 font-head text-2xl font-semibold">The booth card</legend>
        <div className="grid gap-4 sm:grid-cols-3">
          {choose('polarity', 'Polarity', POLARITY_CHOICES)}
          {text('gas', 'Shielding gas', 'C1, M21; empty for none')}
          {choose('travelDirection', 'Drag or push', [{ value: '', label: 'Not said' }, { value: 'drag', label: 'Drag' }, { value: 'push', label: 'Push' }])}
        </div>
        {CARD_RANGES.map((range) => {
          const { label, unit } = rangeKind(range, units)
          return (
            <div key={range} className="grid gap-4 min-[480px]:grid-cols-2">
              {text(`${range}Min`, `${label} from (${unit})`)}
              {text(`${range}Max`, `${label} to (${unit})`)}
            </div>
          )
        })}
        <TextArea label="Note and safety" name="note" defaultValue={values.note} error={error('note')} />
      </fieldset>
      <section aria-labelledby="checks" className="grid gap-3">
        <h2 id="checks" className="text-2xl">Checks against the wire or rod</h2>
        <div aria-live="polite">
          {unread ? <p>Some box cannot be read yet. The checks go on when it can.</p> : warnings.length === 0 ? <p>Nothing found that goes against its class.</p> : (
            <ul className="grid gap-3">{warnings.map((each) => <li key={each.text}><p className="font-bold">{each.text}</p><p className="text-base text-ink-2">{each.source}</p></li>)}</ul>
          )}
        </div>
      </section>
      {saved !== null && !refused && <Notice kind="ok" word={`Saved as version ${saved}`} live>Coupons from now on are welded to it.</Notice>}
      {refused && (
        <Notice kind="problem" word="Not saved" live>
          <p>{refused.message}</p>
          {newer !== null && <p><a href={versions} target="_blank" rel="noreferrer">See what changed (opens a new tab)</a></p>}
        </Notice>
      )}
      <input type="hidden" name="fromVersion" value={newer ?? from} readOnly />
      <SendButton kind="primary" busy={busy}>{busy ? 'Saving' : newer !== null ? `Save mine over version ${newer}` : `Save as version ${from + 1}`}</SendButton>
    </form>
  )
}

'use client'

import { ROLL_GROOVES, type SetUpAnswers } from '@/lib/consumables/set-up-answers'
import { machineCheck } from '@/lib/language/machine-check'
import { say, type Locale } from '@/lib/language/say'
import type { SetUpView } from '@/lib/reports/set-up-lines'
import { Select } from '@/app/_components/ui/select'

type Props = { readonly locale: Locale; readonly view: SetUpView; readonly answers: SetUpAnswers; readonly onAnswers: (answers: SetUpAnswers) => void }

/** Wire, rolls and position as they are found: for the check before the arc, and for nothing else. */
export function MachineAnswers({ locale, view, answers, onAnswers }: Props) {
  const told = (key: keyof typeof machineCheck.en): string => say(machineCheck, locale, key)
  const { facts } = view.basis
  const notLooked = { value: '', label: told('notLooked') }
  const size = (mm: number | null): string => (mm === null ? '' : (view.sizes.find(({ value }) => Number(value) === mm)?.value ?? ''))
  const mmOf = (value: string): number | null => (value === '' ? null : Number(value))
  return (
    <div className="grid gap-3 border border-line bg-plate p-3 sm:grid-cols-2">
      <Select label={told(facts.process === 'SMAW' ? 'rodOn' : 'wireOn')} choices={[notLooked, ...view.sizes]} value={size(answers.wireMm)}
        onChange={(event) => onAnswers({ ...answers, wireMm: mmOf(event.target.value) })} />
      {facts.process !== 'SMAW' && (
        <>
          <Select label={told('rolls')} choices={[notLooked, ...view.sizes]} value={size(answers.rollMm)}
            onChange={(event) => onAnswers({ ...answers, rollMm: mmOf(event.target.value) })} />
          <Select label={told('groove')} choices={[notLooked, ...ROLL_GROOVES.map((value) => ({ value, label: told(`groove-${value}`) }))]} value={answers.groove ?? ''}
            onChange={(event) => onAnswers({ ...answers, groove: ROLL_GROOVES.find((each) => each === event.target.value) ?? null })} />
        </>
      )}
      <Select label={told('positionSet')} choices={[notLooked, ...view.positions.map((value) => ({ value, label: value }))]} value={answers.position ?? ''}
        onChange={(event) => onAnswers({ ...answers, position: event.target.value || null })} />
    </div>
  )
}

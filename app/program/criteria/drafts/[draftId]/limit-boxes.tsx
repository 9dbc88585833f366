'use client'

import { blankLimit, type DraftLimit, type DraftStep, type LimitForm } from '@/lib/criteria/draft/draft'
import { Button } from '@/app/_components/ui/button'
import { FieldError } from '@/app/_components/ui/field'
import { Select } from '@/app/_components/ui/select'
import { TextInput } from '@/app/_components/ui/text-input'
import type { Boxes } from './boxes'
import { quantityChoices } from './choices'

const FORMS: Readonly<Record<LimitForm, string>> = {
  none: 'Open: no limit on this side', fixed: 'One length', angle: 'One angle', linear: 'In proportion to something', table: 'A table by size',
}

type LimitBoxesProps = Boxes<DraftLimit> & {
  /** What is limited: 'At most'. */
  readonly legend: string
  /** Where the limit stands in its rule: 'max'. */
  readonly name: string
  readonly mayBeOpen?: boolean
  readonly angle?: boolean
}

/** One limit: how it is written, and its boxes. Lengths as people write them. */
export function LimitBoxes({ legend, name, value, onChange, error, mayBeOpen = false, angle = false }: LimitBoxesProps) {
  const forms = (['none', ...(angle ? (['angle'] as const) : (['fixed', 'linear', 'table'] as const))] as readonly LimitForm[]).filter((form) => form !== 'none' || mayBeOpen || value.form === 'none')
  const shown = forms.includes(value.form) ? forms : [...forms, value.form]
  const text = (box: 'value' | 'k' | 'c' | 'cap') => ({ value: value[box], error: error(`${name}.${box}`), onChange: (event: { target: { value: string } }) => onChange({ [box]: event.target.value }) })
  return (
    <fieldset aria-describedby={error(name) ? `${name}-problem` : undefined} {...(error(name) && { tabIndex: -1, 'data-problem': true })} className="grid gap-3 border-l-[3px] border-line py-1 pl-4">
      <legend className="pb-1 font-head text-xl leading-tight font-semibold">{legend}</legend>
      <div className="grid gap-3 sm:grid-cols-2">
        <Select
          label="Written as" value={value.form} error={error(`${name}.form`)} choices={shown.map((form) => ({ value: form, label: FORMS[form] }))}
          onChange={(event) => onChange({ form: event.target.value as LimitForm })}
        />
        {(value.form === 'fixed' || value.form === 'angle') && <TextInput figures label={value.form === 'angle' ? 'Angle' : 'Length'} {...text('value')} />}
      </div>
      {value.form === 'linear' && (
        <div className="grid gap-3 sm:grid-cols-2">
          <TextInput figures label="Times" hint="A number, like 5 or 0.1." {...text('k')} />
          <Select label="Of" value={value.of} choices={quantityChoices} onChange={(event) => onChange({ of: event.target.value as DraftLimit['of'] })} />
          <TextInput figures label="Plus a length (may be empty)" {...text('c')} />
          <TextInput figures label="But no more than (may be empty)" {...text('cap')} />
          <Select
            label="All of it on top of" value={value.plus} choices={[{ value: '', label: 'Nothing' }, ...quantityChoices]} error={error(`${name}.plus`)}
            onChange={(event) => onChange({ plus: event.target.value as DraftLimit['plus'] })}
          />
        </div>
      )}
      {value.form === 'table' && <StepBoxes name={name} value={value} onChange={onChange} error={error} />}
      {error(name) && <FieldError id={`${name}-problem`}>{error(name)}</FieldError>}
    </fieldset>
  )
}

function StepBoxes({ name, value, onChange, error }: Boxes<DraftLimit> & { readonly name: string }) {
  const put = (index: number, change: Partial<DraftStep>): void => onChange({ steps: value.steps.map((step, place) => (place === index ? { ...step, ...change } : step)) })
  return (
    <div className="grid gap-3">
      <Select label="By" value={value.by} choices={quantityChoices} onChange={(event) => onChange({ by: event.target.value as DraftLimit['by'] })} />
      <ol className="grid gap-3">
        {value.steps.map((step, index) => (
          <li key={index} className="grid items-start gap-3 sm:grid-cols-[1fr_1fr_1fr_auto]">
            <Select
              label={`Row ${index + 1} ends`} value={step.end} onChange={(event) => put(index, { end: event.target.value as DraftStep['end'] })}
              choices={[{ value: 'upTo', label: 'Up to and with' }, { value: 'below', label: 'Under' }, { value: '', label: 'Nowhere: the last row' }]}
            />
            {step.end === '' ? <span className="hidden sm:block" /> : <TextInput figures label={`Row ${index + 1} end`} value={step.at} error={error(`${name}.steps.${index}.at`)} onChange={(event) => put(index, { at: event.target.value })} />}
            <TextInput figures label={`Row ${index + 1} limit`} value={step.value} error={error(`${name}.steps.${index}.value`) ?? (step.end === '' ? error(`${name}.steps.${index}.at`) : undefined)} onChange={(event) => put(index, { value: event.target.value })} />
            {value.steps.length > 1 && (
              <div className="sm:pt-8"><Button kind="quiet" onClick={() => onChange({ steps: value.steps.filter((_, place) => place !== index) })} aria-label={`Remove row ${index + 1}`}>Remove</Button></div>
            )}
          </li>
        ))}
      </ol>
      <div>
        <Button onClick={() => onChange({ steps: [...value.steps.slice(0, -1), { end: 'upTo', at: '', value: '' }, ...(value.steps.at(-1) ? [value.steps.at(-1)!] : blankLimit().steps)] })}>Add a row</Button>
      </div>
    </div>
  )
}

'use client'

import { blankLimit, type DraftRule, type DraftSource } from '@/lib/criteria/draft/draft'
import { scaleUnit } from '@/lib/criteria/draft/scale-unit'
import { RULE_KINDS, type RuleKind } from '@/lib/criteria/types'
import { Select } from '@/app/_components/ui/select'
import { TextArea } from '@/app/_components/ui/text-area'
import { TextInput } from '@/app/_components/ui/text-input'
import { FieldError } from '@/app/_components/ui/field'
import type { Boxes } from './boxes'
import { CheckBoxes } from './check-boxes'
import { KIND_WORDS, STATUS_CHOICES } from './choices'
import { ConditionBoxes } from './condition-boxes'

/** All boxes of one rule: what it asks, of which welds, by whose word, and how much it counts. */
export function RuleBoxes({ value, onChange, error }: Boxes<DraftRule>) {
  const source = (name: keyof DraftSource) =>
    ({ value: value.source[name], error: error(`source.${name}`), onChange: (event: { target: { value: string } }) => onChange({ source: { ...value.source, [name]: event.target.value } }) })
  const kindChanged = (kind: RuleKind): Partial<DraftRule> => ({
    kind,
    // What is open on a range is not open elsewhere.
    ...(kind !== 'reading-range' && kind !== 'size-allowance' && value.max.form === 'none' && { max: { ...value.max, form: blankLimit().form } }),
  })
  const asked = (name: 'when' | 'unless') => Object.entries(value[name]).some(([box, text]) => text !== '' && box !== 'lowKind' && box !== 'highKind')
  return (
    <div className="grid gap-5">
      {error('') && <FieldError id={`rule-${value.key}-problem`}>{error('')}</FieldError>}
      <Select label="Kind of rule" value={value.kind} choices={RULE_KINDS.map((kind) => ({ value: kind, label: KIND_WORDS[kind] }))} error={error('kind')} onChange={(event) => onChange(kindChanged(event.target.value as RuleKind))} />
      <CheckBoxes value={value} onChange={onChange} error={error} />

      <fieldset className="grid gap-3">
        <legend className="mb-2 font-head text-xl font-semibold">Where it comes from</legend>
        <div className="grid gap-3 sm:grid-cols-2">
          <TextInput label="Source" {...source('title')} />
          <TextInput label="Clause (may be empty)" {...source('clause')} />
        </div>
        <Select label="How sure" choices={STATUS_CHOICES} {...source('status')} hint="Read in the standard: only with the clause it was read in." />
        <TextArea rows={2} label="Note (may be empty)" {...source('note')} />
      </fieldset>

      <fieldset className="grid gap-3">
        <legend className="mb-2 font-head text-xl font-semibold">How much it counts</legend>
        <div className="grid gap-3 sm:grid-cols-2">
          <TextInput figures label="Weight in the mark" hint="Beside the weights of the other rules." value={value.weight} error={error('weight')} onChange={(event) => onChange({ weight: event.target.value })} />
          {scaleUnit(value) === 'none' ? <p className="self-center">Readiness reads this kind of rule as yes or no.</p> : (
            <Select
              label="Readiness reads" value={value.readiness} error={error('readiness')} choices={[{ value: 'margin', label: 'How far inside the limit' }, { value: 'attribute', label: 'Yes or no' }]}
              onChange={(event) => onChange({ readiness: event.target.value as DraftRule['readiness'] })}
            />
          )}
          {scaleUnit(value) !== 'none' && value.readiness === 'margin' && (
            <TextInput figures label="In steps of" hint="A learner’s worst margin should vary by about 0.4 steps from bead to bead." value={value.scale} error={error('scale')} onChange={(event) => onChange({ scale: event.target.value })} />
          )}
        </div>
      </fieldset>

      <details open={asked('when') || asked('unless')}>
        <summary className="flex min-h-12 cursor-pointer items-center underline underline-offset-4">Which welds it is for, and its short name</summary>
        <div className="grid gap-4 py-3">
          <ConditionBoxes legend="Only for" name="when" value={value.when} onChange={(change) => onChange({ when: { ...value.when, ...change } })} error={error} />
          <ConditionBoxes legend="Not for" name="unless" value={value.unless} onChange={(change) => onChange({ unless: { ...value.unless, ...change } })} error={error} />
          <TextInput
            label="Short name" hint="Lower-case letters, digits and hyphens. Rules that share one are one rule that reads differently for different welds: the first that applies holds."
            value={value.id} error={error('id')} onChange={(event) => onChange({ id: event.target.value })}
          />
        </div>
      </details>
    </div>
  )
}

'use client'

import type { DraftCondition, YesNo } from '@/lib/criteria/draft/draft'
import { Select } from '@/app/_components/ui/select'
import { TextInput } from '@/app/_components/ui/text-input'
import type { Boxes } from './boxes'

const yesNo = [{ value: '', label: 'Does not matter' }, { value: 'yes', label: 'Yes' }, { value: 'no', label: 'No' }]

/** The welds a rule is for, or not for; a box left alone asks for nothing. */
export function ConditionBoxes({ legend, name, value, onChange, error }: Boxes<DraftCondition> & { readonly legend: string; readonly name: 'when' | 'unless' }) {
  const flag = (box: 'completePenetration' | 'transverseToTension' | 'stiffenerToWeb', label: string) => (
    <Select label={label} value={value[box]} choices={yesNo} onChange={(event) => onChange({ [box]: event.target.value as YesNo })} />
  )
  return (
    <fieldset className="grid gap-3 border-l-[3px] border-line py-1 pl-4">
      <legend className="pb-1 font-head text-xl leading-tight font-semibold">{legend}</legend>
      <div className="grid gap-3 sm:grid-cols-2">
        <Select
          label="Weld" value={value.weld} choices={[{ value: '', label: 'Any' }, { value: 'fillet', label: 'Fillet' }, { value: 'groove', label: 'Groove' }]}
          onChange={(event) => onChange({ weld: event.target.value as DraftCondition['weld'] })}
        />
        {flag('completePenetration', 'Complete penetration')}
        {flag('transverseToTension', 'Across the tension')}
        {flag('stiffenerToWeb', 'Stiffener joined to a web')}
        <Select label="Plate thickness begins" value={value.lowKind} choices={[{ value: 'from', label: 'From and with' }, { value: 'above', label: 'Over' }]} onChange={(event) => onChange({ lowKind: event.target.value as DraftCondition['lowKind'] })} />
        <TextInput figures label="Least thickness (may be empty)" value={value.low} error={error(`${name}.low`)} onChange={(event) => onChange({ low: event.target.value })} />
        <Select label="Plate thickness ends" value={value.highKind} choices={[{ value: 'upTo', label: 'Up to and with' }, { value: 'below', label: 'Under' }]} onChange={(event) => onChange({ highKind: event.target.value as DraftCondition['highKind'] })} />
        <TextInput figures label="Greatest thickness (may be empty)" value={value.high} error={error(`${name}.high`)} onChange={(event) => onChange({ high: event.target.value })} />
      </div>
    </fieldset>
  )
}

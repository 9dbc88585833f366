'use client'

import type { DraftAllowance } from '@/lib/criteria/draft/draft'
import { Select } from '@/app/_components/ui/select'
import { TextInput } from '@/app/_components/ui/text-input'
import type { Boxes } from './boxes'

/** Over how much of the weld more is allowed. */
export function AllowanceBoxes({ value, onChange, error }: Boxes<DraftAllowance>) {
  const text = (box: 'share' | 'length' | 'window' | 'shareIfShorter') =>
    ({ value: value[box], error: error(`over.${box}`), onChange: (event: { target: { value: string } }) => onChange({ [box]: event.target.value }) })
  return (
    <fieldset className="grid gap-3 border-l-[3px] border-line py-1 pl-4">
      <legend className="pb-1 font-head text-xl leading-tight font-semibold">Over how much of the weld</legend>
      <div className="grid gap-3 sm:grid-cols-2">
        <Select
          label="Counted in" value={value.per} choices={[{ value: 'window', label: 'Any stretch of weld' }, { value: 'weld', label: 'Per cent of the whole weld' }]}
          onChange={(event) => onChange({ per: event.target.value as DraftAllowance['per'] })}
        />
        {value.per === 'weld' ? <TextInput figures label="Share of the weld" hint="Like 10 %." {...text('share')} /> : (
          <>
            <TextInput figures label="Length allowed" {...text('length')} />
            <TextInput figures label="In any" hint="The stretch, like 12 in." {...text('window')} />
            <TextInput figures label="Share of a shorter weld (may be empty)" hint="Empty: the same length." {...text('shareIfShorter')} />
          </>
        )}
      </div>
    </fieldset>
  )
}

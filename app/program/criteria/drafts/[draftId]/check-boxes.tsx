'use client'

import type { DraftRule } from '@/lib/criteria/draft/draft'
import type { IndicationKind } from '@/lib/scoring/types'
import { Checkbox } from '@/app/_components/ui/checkbox'
import { Select } from '@/app/_components/ui/select'
import { TextInput } from '@/app/_components/ui/text-input'
import { AllowanceBoxes } from './allowance-boxes'
import type { Boxes } from './boxes'
import { readingChoices, sizeChoices } from './choices'
import { KindBoxes } from './kind-boxes'
import { LimitBoxes } from './limit-boxes'

type LimitName = 'min' | 'max' | 'allowed' | 'nominal' | 'beyond'

/** The boxes of a rule's own kind. */
export function CheckBoxes({ value, onChange, error }: Boxes<DraftRule>) {
  const angle = value.kind === 'reading-range' && value.reading === 'toe-angle'
  const limit = (name: LimitName, legend: string, mayBeOpen = false) => (
    <LimitBoxes legend={legend} name={name} value={value[name]} onChange={(change) => onChange({ [name]: { ...value[name], ...change } })} error={error} mayBeOpen={mayBeOpen} angle={angle} />
  )
  const kinds = (name: 'of' | 'ifSeen', legend: string) => (
    <KindBoxes legend={legend} name={`${value.key}-${name}`} value={value[name]} onChange={(next: readonly IndicationKind[]) => onChange({ [name]: next })} error={error(name)} />
  )
  const text = (name: 'window' | 'count' | 'countFrom' | 'share', label: string, hint?: string) => (
    <TextInput figures label={label} hint={hint} value={value[name]} error={error(name)} onChange={(event) => onChange({ [name]: event.target.value })} />
  )
  const size = <Select label="Which size" value={value.size} choices={sizeChoices} error={error('size')} onChange={(event) => onChange({ size: event.target.value as DraftRule['size'] })} />
  const reading = <Select label="What is measured" value={value.reading} choices={readingChoices} error={error('reading')} onChange={(event) => onChange({ reading: event.target.value as DraftRule['reading'] })} />
  const optional = <Checkbox label="Judge it only where somebody measured it" checked={value.optional} onChange={(event) => onChange({ optional: event.target.checked })} />
  const over = <AllowanceBoxes value={value.over} onChange={(change) => onChange({ over: { ...value.over, ...change } })} error={error} />

  switch (value.kind) {
    case 'absent': return <>{kinds('of', 'None of these')}{kinds('ifSeen', 'These reject where seen, and need not be looked for')}</>
    case 'attribute':
      return (
        <>
          <Select
            label="The question" value={value.answer} choices={[{ value: 'fusionComplete', label: 'Is fusion complete?' }, { value: 'cratersFilled', label: 'Are the craters filled?' }]}
            onChange={(event) => onChange({ answer: event.target.value as DraftRule['answer'] })}
          />
          {kinds('of', 'None of these either')}{kinds('ifSeen', 'These reject where seen, and need not be looked for')}
        </>
      )
    case 'largest-size': return <>{kinds('of', 'Of these')}{size}{limit('max', 'At most')}</>
    case 'size-allowance': return <>{kinds('of', 'Of these')}{size}{limit('max', 'At most, over any length', true)}{limit('allowed', 'Up to this, over a limited length')}{over}</>
    case 'reading-range': return <>{reading}{limit('min', 'At least', true)}{limit('max', 'At most', true)}{optional}</>
    case 'reading-spread': return <>{reading}{limit('max', 'Largest less smallest, at most')}</>
    case 'reading-allowance':
      return (
        <>
          {reading}
          <Select label="Every station is" value={value.side} choices={[{ value: 'below', label: 'At least the limit' }, { value: 'above', label: 'At most the limit' }]} onChange={(event) => onChange({ side: event.target.value as DraftRule['side'] })} />
          {limit('nominal', 'The limit')}{limit('beyond', 'Past it by at most')}{over}{optional}
        </>
      )
    case 'window-sum': return <>{kinds('of', 'Of these')}{size}{text('countFrom', 'Count from this size on', 'A length; 0 counts all.')}{text('window', 'In any', 'The stretch of weld, like 1 in.')}{limit('max', 'Adding up to at most')}</>
    case 'window-count': return <>{kinds('of', 'Of these')}{text('window', 'In any', 'The stretch of weld, like 4 in.')}{text('count', 'At most so many')}</>
    case 'length-share': return <>{kinds('of', 'Of these')}{text('share', 'Over at most', 'Per cent of the weld’s length, like 10 %.')}</>
    case 'not-judged':
      return (
        <Select
          label="Why not" value={value.reason} choices={[{ value: 'permitted', label: 'It is permitted' }, { value: 'depends-on-application', label: 'It depends on the application' }]}
          onChange={(event) => onChange({ reason: event.target.value as DraftRule['reason'] })}
        />
      )
  }
}

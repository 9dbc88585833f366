import type { FormAnswer, TestPartsForm } from '@/lib/schemas/test-form'
import { Button } from '@/app/_components/ui/button'
import { RadioPills } from '@/app/_components/ui/radio-pills'
import { TextInput } from '@/app/_components/ui/text-input'

type Break = TestPartsForm['filletBreak']
type Props = { readonly value: Break; readonly errors: Readonly<Record<string, string>>; readonly onChange: (value: Break) => void }

/** What a pill of the form means. */
export const answerOf = (text: string): FormAnswer => (text === 'yes' || text === 'no' ? text : '')
export const YES_NO = [{ value: 'yes', label: 'Yes' }, { value: 'no', label: 'No' }] as const

/** The fillet break: whether it folded flat, the root, and every inclusion or pore on the fracture. */
export function BreakBoxes({ value, errors, onChange }: Props) {
  return (
    <section className="grid gap-4">
      <h2 className="text-2xl">Fillet break</h2>
      {value === null ? <div><Button onClick={() => onChange({ foldedFlat: '', rootFused: '', inclusions: [] })}>A fillet break was made</Button></div> : (
        <>
          <RadioPills legend="Did the specimen fold flat on itself without breaking?" name="foldedFlat" value={value.foldedFlat} pills={YES_NO} error={errors['parts.filletBreak.foldedFlat'] ?? null}
            onChange={(event) => onChange({ ...value, foldedFlat: answerOf(event.target.value) })} />
          <RadioPills legend="Fused to the root along the whole fracture?" name="breakRoot" value={value.rootFused} pills={YES_NO} error={errors['parts.filletBreak.rootFused'] ?? null}
            onChange={(event) => onChange({ ...value, rootFused: answerOf(event.target.value) })} />
          {value.inclusions.map((size, at) => (
            <div key={at} className="grid max-w-md gap-2 sm:grid-cols-[1fr_auto] sm:items-end">
              <TextInput figures autoComplete="off" label={`Inclusion or pore ${at + 1}, longest way`} value={size} error={errors[`parts.filletBreak.inclusions.${at}`]}
                onChange={(event) => onChange({ ...value, inclusions: value.inclusions.map((each, place) => (place === at ? event.target.value : each)) })} />
              <Button onClick={() => onChange({ ...value, inclusions: value.inclusions.filter((_, place) => place !== at) })}>Remove it</Button>
            </div>
          ))}
          <div className="flex flex-wrap gap-2">
            <Button onClick={() => onChange({ ...value, inclusions: [...value.inclusions, ''] })}>Add an inclusion or pore</Button>
            <Button onClick={() => onChange(null)}>No fillet break in this test</Button>
          </div>
        </>
      )}
    </section>
  )
}

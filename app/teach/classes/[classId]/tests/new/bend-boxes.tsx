import { MOST_BENDS } from '@/lib/schemas/test-attempt'
import type { BendIndicationForm, TestPartsForm } from '@/lib/schemas/test-form'
import { Button } from '@/app/_components/ui/button'
import { Checkbox } from '@/app/_components/ui/checkbox'
import { RadioPills } from '@/app/_components/ui/radio-pills'
import { Select } from '@/app/_components/ui/select'
import { TextInput } from '@/app/_components/ui/text-input'

type Bends = TestPartsForm['bends']
type Props = { readonly value: Bends; readonly errors: Readonly<Record<string, string>>; readonly onChange: (value: Bends) => void }

const FACES = [{ value: 'face', label: 'Face bend' }, { value: 'root', label: 'Root bend' }, { value: 'side', label: 'Side bend' }] as const

const SEEN = [{ value: 'none', label: 'Looked, nothing open' }, { value: 'some', label: 'Something open' }] as const
const OPENING: BendIndicationForm = { size: '', corner: false, fromSlagOrFusion: false }

/** Guided bends, each with what opened on its bent face. A specimen set aside for a corner crack stays here beside its replacement. */
export function BendBoxes({ value, errors, onChange }: Props) {
  const bends = value ?? []
  const change = (index: number, bend: NonNullable<Bends>[number]): void => onChange(bends.map((each, at) => (at === index ? bend : each)))
  const remove = (index: number): void => {
    const left = bends.filter((_, at) => at !== index)
    onChange(left.length > 0 ? left : null)
  }
  return (
    <section className="grid gap-4">
      <h2 className="text-2xl">Guided bends</h2>
      {bends.length === 0 && <p className="text-ink-2">None in this test.</p>}
      {bends.map((bend, index) => {
        const setSeen = (indications: readonly BendIndicationForm[]): void => change(index, { ...bend, indications })
        const edit = (at: number, over: Partial<BendIndicationForm>): void => setSeen(bend.indications.map((each, place) => (place === at ? { ...each, ...over } : each)))
        return (
          <fieldset key={index} className="grid gap-3 border border-line bg-plate p-3">
            <legend className="px-1 font-head text-xl font-semibold">Bend {index + 1}</legend>
            <div className="grid gap-3 sm:grid-cols-2">
              <Select label={`Bend ${index + 1} is a`} value={bend.face} error={errors[`parts.bends.${index}.face`]} choices={FACES}
                onChange={(event) => change(index, { ...bend, face: FACES.find(({ value: face }) => face === event.target.value)?.value ?? bend.face })} />
            </div>
            <RadioPills legend="On its bent face" name={`seen-${index}`} value={bend.seen} error={errors[`parts.bends.${index}.seen`] ?? null} pills={SEEN}
              onChange={(event) => change(index, event.target.value === 'some' ? { ...bend, seen: 'some', indications: bend.indications.length > 0 ? bend.indications : [OPENING] } : { ...bend, seen: 'none', indications: [] })} />
            {bend.indications.map((seen, at) => (
              <div key={at} className="grid gap-2 border-t border-line pt-3 sm:grid-cols-[10rem_1fr_1fr_auto] sm:items-end">
                <TextInput figures autoComplete="off" label={`Opening ${at + 1}, longest way`} value={seen.size} error={errors[`parts.bends.${index}.indications.${at}.size`]} onChange={(event) => edit(at, { size: event.target.value })} />
                <Checkbox label="at the corner" checked={seen.corner} onChange={(event) => edit(at, { corner: event.target.checked })} />
                <Checkbox label="shows slag or missed fusion" checked={seen.fromSlagOrFusion} onChange={(event) => edit(at, { fromSlagOrFusion: event.target.checked })} />
                {bend.indications.length > 1 && <Button onClick={() => setSeen(bend.indications.filter((_, place) => place !== at))}>Remove opening {at + 1}</Button>}
              </div>
            ))}
            <div className="flex flex-wrap gap-2">
              {bend.seen === 'some' && <Button onClick={() => setSeen([...bend.indications, OPENING])}>Add an opening</Button>}
              <Button onClick={() => remove(index)}>Remove bend {index + 1}</Button>
            </div>
          </fieldset>
        )
      })}
      {bends.length < MOST_BENDS && <div><Button onClick={() => onChange([...bends, { face: bends.at(-1)?.face ?? 'root', seen: '', indications: [] }])}>Add a bend</Button></div>}
    </section>
  )
}

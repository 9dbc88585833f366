import type { TestPartsForm } from '@/lib/schemas/test-form'
import { Button } from '@/app/_components/ui/button'
import { RadioPills } from '@/app/_components/ui/radio-pills'
import { TextInput } from '@/app/_components/ui/text-input'
import { answerOf } from './break-boxes'

type Etch = TestPartsForm['macroetch']
type Props = { readonly fillet: boolean; readonly value: Etch; readonly errors: Readonly<Record<string, string>>; readonly onChange: (value: Etch) => void }

const ANSWERS = [{ value: 'yes', label: 'Yes' }, { value: 'no', label: 'No' }, { value: '', label: 'Not looked at' }] as const
const QUESTIONS = [
  ['crackSeen', 'Is a crack seen?'], ['rootFused', 'Fused to the root?'],
  ['fusionComplete', 'Layers fully fused to each other and to the plate?'], ['profileAcceptable', 'Is the profile acceptable?'],
] as const
const BLANK: NonNullable<Etch> = { crackSeen: '', rootFused: '', fusionComplete: '', profileAcceptable: '', undercut: '', legA: '', legB: '' }

/** The etched cross-section. */
export function MacroetchBoxes({ fillet, value, errors, onChange }: Props) {
  const size = (name: 'undercut' | 'legA' | 'legB', label: string) => (
    <TextInput figures autoComplete="off" label={label} value={value?.[name] ?? ''} error={errors[`parts.macroetch.${name}`]} onChange={(event) => value && onChange({ ...value, [name]: event.target.value })} />
  )
  return (
    <section className="grid gap-4">
      <h2 className="text-2xl">Macroetch</h2>
      {value === null ? <div><Button onClick={() => onChange(BLANK)}>A macroetch was made</Button></div> : (
        <>
          {QUESTIONS.map(([name, legend]) => (
            <RadioPills key={name} legend={legend} name={name} value={value[name]} pills={ANSWERS} error={errors[`parts.macroetch.${name}`] ?? null}
              onChange={(event) => onChange({ ...value, [name]: answerOf(event.target.value) })} />
          ))}
          <div className="grid gap-3 sm:grid-cols-3">
            {size('undercut', 'Undercut, depth (0 for none)')}
            {fillet && size('legA', 'Leg on the standing plate')}
            {fillet && size('legB', 'Leg on the base plate')}
          </div>
          <div><Button onClick={() => onChange(null)}>No macroetch in this test</Button></div>
        </>
      )}
    </section>
  )
}

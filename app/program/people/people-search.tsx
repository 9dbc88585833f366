import { PERSON_ROLES, PERSON_STATES, type PeopleOptions } from '@/lib/reports/people-options'
import { Button } from '@/app/_components/ui/button'
import { Select, type Choice } from '@/app/_components/ui/select'
import { TextInput } from '@/app/_components/ui/text-input'
import { ROLE_WORDS, STATE_WORDS } from './role-words'

const ANY = { value: '', label: 'Any' }

type Props = { readonly path: string; readonly options: PeopleOptions; readonly classes: readonly Choice[] }

/** Finds people. A plain form that asks for the page's own address: it works without scripts, and the result can be kept. */
export function PeopleSearch({ path, options: { search, role, classId, state }, classes }: Props) {
  return (
    <form key={JSON.stringify([search, role, classId, state])} action={path} role="search" aria-label="People" className="grid items-end gap-3 sm:grid-cols-2 lg:grid-cols-[2fr_1fr_2fr_1fr_auto]">
      <TextInput label="Name or sign-in name" name="q" type="search" defaultValue={search} maxLength={80} autoCapitalize="none" autoComplete="off" spellCheck={false} />
      <Select label="Role" name="role" defaultValue={role ?? ''} choices={[ANY, ...PERSON_ROLES.map((value) => ({ value, label: ROLE_WORDS[value] }))]} />
      <Select label="Class" name="class" defaultValue={classId ?? ''} choices={[ANY, ...classes]} />
      <Select label="State" name="state" defaultValue={state ?? ''} choices={[ANY, ...PERSON_STATES.map((value) => ({ value, label: STATE_WORDS[value] }))]} />
      <Button type="submit">Find</Button>
    </form>
  )
}

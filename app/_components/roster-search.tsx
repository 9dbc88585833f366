import { Button } from './ui/button'
import { TextInput } from './ui/text-input'

/** Finds students of a class by name. A plain form that asks for the page's own address: it works without scripts. */
export function RosterSearch({ path, search }: { readonly path: string; readonly search: string }) {
  return (
    <form key={search} action={path} role="search" aria-label="Students of the class" className="flex max-w-xl flex-wrap items-end gap-3 *:first:flex-1">
      <TextInput label="Name or sign-in name" name="q" type="search" defaultValue={search} maxLength={80} autoCapitalize="none" autoComplete="off" spellCheck={false} />
      <Button type="submit">Find</Button>
    </form>
  )
}

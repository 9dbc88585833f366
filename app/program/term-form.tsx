import { program } from '@/lib/language/program'
import { say, type Locale } from '@/lib/language/say'
import type { CountedTerm } from '@/lib/reports/pass-rates'
import { Button } from '@/app/_components/ui/button'
import { Select } from '@/app/_components/ui/select'

type TermFormProps = { readonly terms: readonly CountedTerm[]; readonly chosen: string; readonly locale: Locale }

/** Chooses the term by address, so that a view can be bookmarked and works without JavaScript. */
export function TermForm({ terms, chosen, locale }: TermFormProps) {
  return (
    <form method="get" className="flex flex-wrap items-end gap-2">
      <Select
        label={say(program, locale, 'termWord')} name="term" defaultValue={chosen}
        choices={[...terms.map(({ id, name }) => ({ value: id, label: name })), { value: 'all', label: say(program, locale, 'allTerms') }]}
      />
      <Button type="submit">{say(program, locale, 'showTerm')}</Button>
    </form>
  )
}

import { program } from '@/lib/language/program'
import { say, type Locale } from '@/lib/language/say'
import { Button } from '@/app/_components/ui/button'
import { TextInput } from '@/app/_components/ui/text-input'

type CostFormProps = { readonly typed: string; readonly problem: string | null; readonly locale: Locale }

/** What a failed test costs: asked by address, so that it changes nothing and works without JavaScript. */
export function CostForm({ typed, problem, locale }: CostFormProps) {
  return (
    <form method="get" className="grid max-w-xl gap-3" noValidate>
      <TextInput label={say(program, locale, 'costWord')} hint={say(program, locale, 'costHint')} error={problem} name="cost" defaultValue={typed} figures inputMode="decimal" autoComplete="off" />
      <div><Button type="submit">{say(program, locale, 'costShow')}</Button></div>
    </form>
  )
}

import Link from 'next/link'
import { peopleAddress, PEOPLE_DEFAULTS } from '@/lib/reports/people-options'
import { LinkButton } from './ui/link-button'

type Props = {
  readonly path: string
  readonly search: string
  readonly found: number
  readonly shown: number
  readonly before: string | null
  readonly after: string | null
}

/** How many students were found, and the way back to all of them. */
export function RosterFound({ path, search, found, shown }: Pick<Props, 'path' | 'search' | 'found' | 'shown'>) {
  return <p role="status">{found === 1 ? '1 student' : `${found} students`}{shown < found && `, ${shown} on this page`}.{search !== '' && <> <Link href={path} className="underline">Show everyone</Link></>}</p>
}

/** The pages before and after the one shown; nothing where there is only one. */
export function RosterPages({ path, search, before, after }: Pick<Props, 'path' | 'search' | 'before' | 'after'>) {
  if ((before ?? after) === null) return null
  const to = (change: { readonly before?: string; readonly after?: string }): string => peopleAddress(path, PEOPLE_DEFAULTS, { search, ...change })
  return (
    <nav aria-label="Pages of students" className="flex flex-wrap gap-2">
      {before !== null && <><LinkButton href={to({})}>First page</LinkButton><LinkButton href={to({ before })}>Page before</LinkButton></>}
      {after !== null && <LinkButton href={to({ after })}>Next page</LinkButton>}
    </nav>
  )
}

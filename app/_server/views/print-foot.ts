import 'server-only'
import type { CriteriaSet } from '@/lib/criteria/types'
import { print } from '@/lib/language/print'
import { say, type Locale } from '@/lib/language/say'

/** What a sheet was made with. `judged` is absent where the sheet tells of no coupons; its `model` is null before there is an estimate. */
export type MadeWith = {
  readonly criteria: readonly CriteriaSet[]
  readonly judged?: { readonly scoring: string; readonly model: string | null }
  readonly printedOn: string
}

/** The small print under a sheet's caution line: criteria and versions, which of them hold limits from memory, and the date. */
export function footOf({ criteria, judged, printedOn }: MadeWith, locale: Locale): string[] {
  const titled = new Map(criteria.map((set) => [say(print, locale, 'criteriaVersion', { title: set.title, version: set.version }), set]))
  const marked = [...titled].map(([title, set]) => (fromMemory(set) ? `${title}*` : title))
  return [
    say(print, locale, 'criteriaLine', { criteria: marked.join('; ') }),
    ...(criteria.some(fromMemory) ? [say(print, locale, 'fromMemory')] : []),
    ...(judged ? [say(print, locale, 'scoringLine', { scoring: judged.scoring }), say(print, locale, 'modelLine', { model: judged.model ?? say(print, locale, 'noModel') })] : []),
    say(print, locale, 'printed', { date: printedOn }),
  ]
}

const fromMemory = ({ rules }: CriteriaSet): boolean => rules.some(({ source }) => source.status === 'memory')

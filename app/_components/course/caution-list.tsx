import { learn } from '@/lib/language/learn'
import { scorecardWords } from '@/lib/language/scorecard'
import { say, type Locale } from '@/lib/language/say'
import type { Source } from '@/lib/source'

type Group = { readonly topic: string; readonly items: readonly { readonly text: string; readonly source: Source }[] }
type Props = { readonly groups: readonly Group[]; readonly locale: Locale; readonly folded?: boolean }

/** The cautions of an exercise by topic, each with its source and how sure it is. Folded once they were confirmed. */
export function CautionList({ groups, locale, folded = false }: Props) {
  return (
    <div className="grid gap-3">
      {groups.map((group) => (
        <details key={group.topic} open={!folded} className="border border-line bg-plate px-4">
          <summary className="flex min-h-12 cursor-pointer items-center font-head text-xl font-semibold">{group.topic}</summary>
          <ul className="grid list-disc gap-2 pb-4 pl-5">
            {group.items.map((item) => (
              <li key={item.text}>
                {item.text}{' '}
                <span className="text-base text-ink-2">
                  {item.source.clause === null ? item.source.title : say(scorecardWords, locale, 'clause', { title: item.source.title, clause: item.source.clause })}
                  {' · '}
                  {say(scorecardWords, locale, item.source.status)}
                </span>
              </li>
            ))}
          </ul>
        </details>
      ))}
      <p className="font-bold">{say(learn, locale, 'deferSafety')}</p>
    </div>
  )
}

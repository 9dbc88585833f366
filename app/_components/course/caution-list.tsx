import { learn } from '@/lib/language/learn'
import { scorecardWords } from '@/lib/language/scorecard'
import { say, type Locale } from '@/lib/language/say'
import type { Source } from '@/lib/source'

type Group = { readonly topic: string; readonly items: readonly { readonly text: string; readonly source: Source }[] }
type Props = { readonly groups: readonly Group[]; readonly locale: Locale }

/** The cautions of an exercise by topic, each with its source and how sure it is. */
export function CautionList({ groups, locale }: Props) {
  return (
    <div className="grid gap-5">
      {groups.map((group) => (
        <section key={group.topic}>
          <h3 className="border-b-2 border-ink pb-1 text-xl">{group.topic}</h3>
          <ul className="divide-y divide-line">
            {group.items.map((item) => (
              <li key={item.text} className="py-2">
                {item.text}
                <span className="block text-base leading-snug text-ink-2">
                  {item.source.clause === null ? item.source.title : say(scorecardWords, locale, 'clause', { title: item.source.title, clause: item.source.clause })}
                  {' · '}
                  {say(scorecardWords, locale, item.source.status)}
                </span>
              </li>
            ))}
          </ul>
        </section>
      ))}
      <p className="font-bold">{say(learn, locale, 'deferSafety')}</p>
    </div>
  )
}

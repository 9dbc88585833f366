import { print } from '@/lib/language/print'
import { say, type Locale } from '@/lib/language/say'
import type { BoothCardSheet } from '@/app/_server/views/booth-card-sheet'

/** Every caution in three columns, and where each comes from and how sure that is, by number. */
export function CautionSheet({ cautions, sources, locale }: Pick<BoothCardSheet, 'cautions' | 'sources'> & { readonly locale: Locale }) {
  return (
    <section>
      <div className="flex flex-wrap items-baseline justify-between gap-x-4 border-b border-ink pb-1">
        <h2 className="text-xl leading-tight">{say(print, locale, 'cautions')}</h2>
        <p className="leading-tight font-bold">{say(print, locale, 'defer')}</p>
      </div>
      <div className="mt-1 gap-x-[6mm] md:columns-3 print:columns-3">
        {cautions.map(({ topic, items }) => (
          <section key={topic} className="pb-1">
            <h3 className="text-lg leading-tight print:text-[11pt]">{topic}</h3>
            <ul>
              {items.map(({ text, source }) => (
                <li key={text} className="pb-1 text-base leading-snug print:pb-[0.6mm] print:text-[8.2pt] print:leading-tight">{text} [{source}]</li>
              ))}
            </ul>
          </section>
        ))}
      </div>
      <div className="mt-1 text-sm leading-snug print:text-[7.2pt] print:leading-tight">{sources.map((line) => <p key={line} className="first-letter:uppercase">{line}</p>)}</div>
    </section>
  )
}

import type { ReactNode } from 'react'
import { door } from '@/lib/language/door'
import { print } from '@/lib/language/print'
import { classPaper } from '@/lib/language/class-paper'
import { say, type Locale } from '@/lib/language/say'
import { PAPERS, type Paper } from '@/lib/reports/paper'

type PaperPagesProps = {
  readonly paper: Paper
  readonly locale: Locale
  /** When it was printed, with its time zone. */
  readonly printedAt: string
  readonly pages: readonly { readonly key: string; readonly body: ReactNode; readonly foot?: readonly string[] }[]
}

/** A document of several sheets, each with the caution line, its place among them and when it was printed. The first lines are for the screen only. */
export function PaperPages({ paper, locale, printedAt, pages }: PaperPagesProps) {
  const other = PAPERS.find((each) => each !== paper) ?? paper
  return (
    <>
      <p className="mx-auto max-w-[216mm] px-4 pt-4 text-base print:hidden">
        {say(print, locale, 'forPaper')} {say(print, locale, 'paperNow', { paper: say(print, locale, paper) })}{' '}
        <a href={`?paper=${other}`} className="inline-flex min-h-6 items-center">{say(print, locale, 'otherPaper', { paper: say(print, locale, other) })}</a>
      </p>
      <main id="main" className={`sheet-${paper} mx-auto p-4 sm:p-8 print:p-0`}>
        {pages.map(({ key, body, foot = [] }, i) => (
          <section key={key} className={`flex flex-col gap-4 pb-8 print:gap-2.5 print:pb-0 ${HEIGHT[paper]} ${i + 1 < pages.length ? 'print:break-after-page' : ''}`}>
            {body}
            <footer className="mt-auto border-t-2 border-ink pt-2 text-sm leading-snug print:break-inside-avoid">
              <p className="font-bold">{say(door, locale, 'practiceRecord')}</p>
              <p>{[...foot, say(classPaper, locale, 'page', { n: i + 1, of: pages.length }), say(classPaper, locale, 'printedAt', { at: printedAt })].join(' ')}</p>
            </footer>
          </section>
        ))}
      </main>
    </>
  )
}

/** The sheet less its margins, and less a hair, so that no empty sheet follows. */
const HEIGHT: Readonly<Record<Paper, string>> = { letter: 'print:min-h-[254mm]', a4: 'print:min-h-[272mm]' }

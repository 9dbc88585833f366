import type { ReactNode } from 'react'
import { door } from '@/lib/language/door'
import { print } from '@/lib/language/print'
import { say, type Locale } from '@/lib/language/say'
import { PAPERS, type Paper } from '@/lib/reports/paper'

type SheetProps = {
  readonly paper: Paper
  /** What else stands in the address, to be kept when the sheet is changed. */
  readonly query?: Readonly<Record<string, string>>
  readonly locale: Locale
  /** Under the caution line: criteria, versions, date, a sentence each. */
  readonly foot: readonly string[]
  /** One sheet, filled from top to bottom. Otherwise as many as it takes, with the foot on each of them. */
  readonly whole?: boolean
  readonly children: ReactNode
}

/** One document: what it says, then the caution line and what it was made with. The first lines are for the screen only. */
export function Sheet({ paper, query = {}, locale, foot, whole = false, children }: SheetProps) {
  const other = PAPERS.find((each) => each !== paper) ?? paper
  return (
    <>
      <p className="mx-auto max-w-[216mm] px-4 pt-4 text-base print:hidden">
        {say(print, locale, 'forPaper')} {say(print, locale, 'paperNow', { paper: say(print, locale, paper) })}{' '}
        <a href={`?${new URLSearchParams({ ...query, paper: other }).toString()}`} className="inline-flex min-h-6 items-center">
          {say(print, locale, 'otherPaper', { paper: say(print, locale, other) })}
        </a>
      </p>
      <main id="main" className={`sheet-${paper} mx-auto p-4 sm:p-8 print:p-0 ${whole ? `${STACK} ${HEIGHT[paper]}` : 'print:table print:w-full'}`}>
        {whole ? children : <div className={`${STACK} pb-4 print:pb-3`}>{children}</div>}
        <footer className={whole ? 'mt-auto' : 'print:table-footer-group print:break-inside-avoid'}>
          <div className="border-t-2 border-ink pt-2 text-sm leading-snug">
            <p className="font-bold">{say(door, locale, 'practiceRecord')}</p>
            <p>{foot.join(' ')}</p>
          </div>
        </footer>
      </main>
    </>
  )
}

const STACK = 'flex flex-col gap-4 print:gap-2.5'
/** The sheet less its margins, and less a hair, so that no empty second sheet follows. */
const HEIGHT: Readonly<Record<Paper, string>> = { letter: 'print:min-h-[254mm]', a4: 'print:min-h-[272mm]' }

import { print } from '@/lib/language/print'
import { say, type Locale } from '@/lib/language/say'

/** Two lines to sign on, kept together at the end of the report. */
export function Signatures({ student, locale }: { readonly student: string; readonly locale: Locale }) {
  const lines = [say(print, locale, 'signInstructor'), `${say(print, locale, 'signStudent')}, ${student}`]
  return (
    <section className="grid break-inside-avoid grid-cols-2 gap-x-[10mm] pt-[9mm]">
      {lines.map((who) => (
        <p key={who} className="flex justify-between gap-3 border-t border-ink pt-1 leading-tight">
          <span>{who}</span>
          <span className="shrink-0 sm:w-[24mm]">{say(print, locale, 'signDate')}</span>
        </p>
      ))}
    </section>
  )
}

'use client'

import { useEffect, useState } from 'react'
import { NO_ANSWERS, type SetUpAnswers } from '@/lib/consumables/set-up-answers'
import { logPad } from '@/lib/language/log-pad'
import { say, type Locale } from '@/lib/language/say'
import type { SetUpLine, SetUpView } from '@/lib/reports/set-up-lines'
import type { PassForm } from '@/lib/schemas/passes'
import { later } from '@/app/_components/later'
import { Button } from '@/app/_components/ui/button'
import { VerdictMark } from '@/app/_components/ui/verdict-mark'

/** Comes when someone wants to look at the machine. */
const MachineAnswers = later(() => import('./machine-answers').then((module) => module.MachineAnswers))

type Props = {
  readonly locale: Locale
  readonly units: 'in' | 'mm'
  readonly view: SetUpView
  readonly filledIn: PassForm | undefined
  readonly pass: PassForm | undefined
  readonly answers: SetUpAnswers
  readonly onAnswers: (answers: SetUpAnswers) => void
}

/** Booth card and wire against what the student has set, said before the arc. It only speaks; it stops nobody. */
export function SetUpCheck({ locale, units, view, filledIn, pass, answers, onAnswers }: Props) {
  const lines = useLines({ locale, units, view, filledIn, pass, answers })
  const [open, setOpen] = useState(false)
  const told = (key: Parameters<typeof say<keyof typeof logPad.en>>[2], values: Record<string, string | number> = {}): string => say(logPad, locale, key, values)
  return (
    <section aria-label={told('before')} className="grid gap-3">
      <h2 className="text-2xl">{told('before')}</h2>
      <div role="status" className="grid gap-2">
        {lines.length === 0 ? (
          <p className="flex items-center gap-2"><VerdictMark verdict="accept" size="small" /><span>{told('setUpAgrees')}</span></p>
        ) : (
          <>
            <p className="font-bold">{lines.length === 1 ? told('setUpLook') : told('setUpLooks', { n: lines.length })}</p>
            <ul className="divide-y divide-line border-y border-line bg-plate">
              {lines.map((line) => (
                <li key={line.text} className="flex gap-3 p-3">
                  <VerdictMark verdict={line.severity === 'wrong' ? 'reject' : 'incomplete'} size="small" />
                  <span className="min-w-0">
                    <strong>{told(line.severity)}:</strong> {line.text}{line.why && <span className="block">{line.why}</span>}
                    <span className="block text-base text-ink-2">{line.source}</span>
                  </span>
                </li>
              ))}
            </ul>
          </>
        )}
      </div>
      <p className="text-ink-2">{told('beforeHint')}</p>
      {open && <MachineAnswers locale={locale} view={view} answers={answers} onAnswers={onAnswers} />}
      <div><Button aria-expanded={open} onClick={() => setOpen(!open)}>{told(open ? 'closeMachine' : 'checkMachine')}</Button></div>
    </section>
  )
}

/** The page brings the lines of the settings it filled in; what checks others comes to the device when something is changed. */
function useLines({ locale, units, view, filledIn, pass, answers }: Omit<Props, 'onAnswers'>): readonly SetUpLine[] {
  const [checked, setChecked] = useState<readonly SetUpLine[] | null>(null)
  const { basis } = view
  const asked = writeSetUp(pass, answers)
  const isFilledIn = asked === writeSetUp(filledIn, NO_ANSWERS)
  useEffect(() => {
    if (isFilledIn) return
    let wanted = true
    void Promise.all([import('@/lib/reports/set-up-lines'), import('@/lib/procedure/typed-pass')]).then(([{ setUpLines }, { readPassSoFar }]) => {
      const set = JSON.parse(asked) as SetUpAsked
      if (wanted && set.pass) setChecked(setUpLines(basis, readPassSoFar(set.pass, units), set.answers, { locale, units }))
    }, () => undefined) // without a connection the lines that stand stay as they are
    return () => { wanted = false }
  }, [asked, isFilledIn, basis, units, locale])
  return isFilledIn || checked === null ? view.lines : checked
}

type SetUpAsked = { readonly pass: PassForm | undefined; readonly answers: SetUpAnswers }

/** As text, so that the check runs again when one of its answers changes and not at every other tap; time and length come after the arc. */
function writeSetUp(pass: PassForm | undefined, answers: SetUpAnswers): string {
  const asked: SetUpAsked = { pass: pass && { ...pass, arcTime: '', length: '' }, answers }
  return JSON.stringify(asked)
}

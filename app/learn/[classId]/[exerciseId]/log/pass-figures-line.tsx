'use client'

import { passFigureWords } from '@/lib/language/pass-figures'
import { say, type Locale } from '@/lib/language/say'
import type { Process } from '@/lib/procedure/process'
import { readPassSoFar } from '@/lib/procedure/typed-pass'
import { passFigures } from '@/lib/reports/pass-figures'
import type { PassForm } from '@/lib/schemas/passes'

type Props = { readonly locale: Locale; readonly units: 'in' | 'mm'; readonly process: Process; readonly pass: PassForm }

/** Travel speed, arc energy and heat input of a pass, while its boxes are being filled. */
export function PassFiguresLine({ locale, units, process, pass }: Props) {
  const figures = passFigures(readPassSoFar(pass, units), process, { locale, units })
  return figures.length > 0 && (
    <p role="status" className="figures text-lg"><span className="font-text text-base text-ink-2">{say(passFigureWords, locale, 'computed')}</span> {figures.join(' · ')}</p>
  )
}

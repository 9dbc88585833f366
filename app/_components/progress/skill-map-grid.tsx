import Link from 'next/link'
import { myProgress } from '@/lib/language/my-progress'
import { say, type Locale } from '@/lib/language/say'
import type { Process } from '@/lib/procedure/process'
import type { HeatStep } from '@/lib/reports/readiness-track'
import type { SkillMapBlock } from '@/lib/reports/skill-map'
import { HEAT } from '../ui/heat-cell'
import { HeatSteps } from './heat-steps'

type Cell = {
  readonly id: string
  readonly href: string
  readonly label: string
  readonly title: string
  readonly standing: { readonly text: string; readonly spoken: string }
  readonly step: HeatStep
  readonly word: string
}
type Props = { readonly map: readonly (SkillMapBlock<Cell> & { readonly process: Process })[]; readonly locale: Locale }

/** Exercises by process and position, each a link: shaded by readiness, with the figure, rising steps and a word. */
export function SkillMapGrid({ map, locale }: Props) {
  return (
    <div className="grid gap-6">
      {map.map(({ process, rows }) => (
        <section key={process}>
          <h3 className="eyebrow">{process}</h3>
          <ul className="divide-y divide-line border-y border-line">
            {rows.map(({ position, progression, cells }) => (
              <li key={`${position} ${progression ?? ''}`} className="flex items-start gap-2 py-2">
                <p className="w-20 shrink-0 pt-1 leading-tight">
                  <span className="font-head text-2xl leading-none font-semibold">{position}</span>
                  {progression && <span className="block text-base text-ink-2">{say(myProgress, locale, progression === 'up' ? 'upward' : 'downward')}</span>}
                </p>
                <ul className="grid min-w-0 flex-1 gap-2 sm:grid-cols-2">{cells.map((cell) => <li key={cell.id}><CellLink cell={cell} /></li>)}</ul>
              </li>
            ))}
          </ul>
        </section>
      ))}
    </div>
  )
}

function CellLink({ cell }: { readonly cell: Cell }) {
  return (
    <Link href={cell.href} aria-label={`${cell.title}: ${cell.standing.spoken}, ${cell.word}`} className="ring-inside flex min-h-14 items-stretch gap-3 rounded-cell border border-line bg-plate no-underline hover:border-ink">
      <span className={`flex w-18 shrink-0 flex-col items-center justify-center gap-1 rounded-l-cell py-1 forced-colors:border-r ${HEAT[cell.step]}`}>
        <span className={`figures leading-none ${cell.step === 0 ? 'text-base' : 'text-xl'}`}>{cell.standing.text || '–'}</span>
        <HeatSteps step={cell.step} />
      </span>
      <span className="min-w-0 py-1.5 pr-2 leading-tight">
        <span className="block font-bold">{cell.label}</span>
        <span className="block text-base text-ink-2">{cell.word}</span>
      </span>
    </Link>
  )
}

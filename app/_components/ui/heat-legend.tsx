import { HEAT_FROM } from '@/lib/reports/readiness-track'
import { HEAT } from './heat-cell'

export type HeatLegendWords = {
  /** 'Chance of passing the next test coupon' */
  readonly title: string
  /** 'no estimate yet' */
  readonly none: string
  /** 'under' */
  readonly under: string
  /** 'and up' */
  readonly andUp: string
  /** 'waiting for you'; left out where nothing can wait */
  readonly waiting?: string
}

/** What the shades mean, in their order. */
export function HeatLegend({ words }: { readonly words: HeatLegendWords }) {
  const figure = (value: number) => value.toFixed(2)
  const entries = [
    { step: 0, label: words.none },
    { step: 1, label: `${words.under} ${figure(HEAT_FROM[2])}` },
    { step: 2, label: `${figure(HEAT_FROM[2])}–${figure(HEAT_FROM[3] - 0.01)}` },
    { step: 3, label: `${figure(HEAT_FROM[3])}–${figure(HEAT_FROM[4] - 0.01)}` },
    { step: 4, label: `${figure(HEAT_FROM[4])}–${figure(HEAT_FROM[5] - 0.01)}` },
    { step: 5, label: `${figure(HEAT_FROM[5])} ${words.andUp}` },
  ] as const
  return (
    <div className="flex flex-wrap items-center gap-x-4 gap-y-2">
      <p className="eyebrow">{words.title}</p>
      <ul className="contents">
        {entries.map(({ step, label }) => (
          <li key={step} className="flex items-center gap-2">
            <span aria-hidden="true" className={`h-5 w-8 rounded-cell border border-line ${HEAT[step]}`} />
            {label}
          </li>
        ))}
        {words.waiting && (
          <li className="flex items-center gap-2">
            <svg viewBox="0 0 10 10" aria-hidden="true" className="size-3" fill="none" stroke="currentColor" strokeWidth={2}>
              <circle cx={5} cy={5} r={4} />
            </svg>
            {words.waiting}
          </li>
        )}
      </ul>
    </div>
  )
}

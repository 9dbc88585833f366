import { heatStep, type HeatStep } from '@/lib/reports/readiness-track'

/** Grounds and the text that is readable on each, in either theme. */
export const HEAT: Readonly<Record<HeatStep, string>> = {
  0: 'bg-heat-0 text-heat-0-ink',
  1: 'bg-heat-1 text-heat-pale-ink',
  2: 'bg-heat-2 text-heat-pale-ink',
  3: 'bg-heat-3 text-heat-pale-ink',
  4: 'bg-heat-4 text-heat-deep-ink',
  5: 'bg-heat-5 text-heat-deep-ink',
}

export type HeatCellProps = {
  /** The chance of passing, 0 to 1; null while there is no estimate: the plate stays grey. */
  readonly probability: number | null
  /** What the cell says: '0.83', '3 of 5'; '' where nothing has been tried. */
  readonly text: string
  /** What a screen reader says instead: '0.83, two coupons waiting', 'not started'. */
  readonly spoken: string
  /** Something waits for the reader here. */
  readonly waiting?: boolean
}

/** One exercise of one student: shaded by readiness, with the figure on it and a ring when something waits. */
export function HeatCell({ probability, text, spoken, waiting = false }: HeatCellProps) {
  return (
    <span
      className={`relative flex min-h-10 min-w-16 items-center justify-center rounded-cell border border-transparent px-1 print:border-line forced-colors:border-[CanvasText] ${HEAT[heatStep(probability)]}`}
    >
      <span aria-hidden="true" className={`figures leading-none ${probability === null ? 'text-base' : 'text-xl'}`}>
        {text}
      </span>
      {waiting && (
        <svg viewBox="0 0 10 10" aria-hidden="true" className="absolute top-0.5 right-0.5 size-2.5" fill="none" stroke="currentColor" strokeWidth={2}>
          <circle cx={5} cy={5} r={4} />
        </svg>
      )}
      <span className="sr-only">{spoken}</span>
    </span>
  )
}

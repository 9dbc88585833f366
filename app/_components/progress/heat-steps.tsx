import type { HeatStep } from '@/lib/reports/readiness-track'

const STEPS = [1, 2, 3, 4, 5] as const

/** The shade of readiness as a shape: rising bars, the more of them filled the better the chance. Its words stand beside it. */
export function HeatSteps({ step }: { readonly step: HeatStep }) {
  return (
    <svg viewBox="0 0 44 14" aria-hidden="true" className="h-3.5 w-11" fill="none" stroke="currentColor" strokeWidth={1.25}>
      {STEPS.map((each) => (
        <rect key={each} x={(each - 1) * 9 + 0.75} y={13.25 - each * 2.4} width={6.5} height={each * 2.4} fill={each <= step ? 'currentColor' : 'none'} />
      ))}
    </svg>
  )
}

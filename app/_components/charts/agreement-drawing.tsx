import type { AgreementFigures, Corrected } from '@/lib/reports/agreement-figures'

type AgreementDrawingProps = { readonly share: AgreementFigures['share']; readonly ac1?: Corrected }

const percent = (value: number): number => Math.max(0, Math.min(100, value * 100))

/** How many of a hundred were alike, with the interval; below it, dashed, AC1 where it is given. Stretches with its place; lines keep their thickness. */
export function AgreementDrawing({ share, ac1 }: AgreementDrawingProps) {
  if (!share) return null
  return (
    <svg viewBox="0 0 100 32" preserveAspectRatio="none" aria-hidden="true" className="block h-8 w-full overflow-visible" fill="none">
      <path d="M0 0v32M50 0v32M100 0v32" className="stroke-line" vectorEffect="non-scaling-stroke" />
      <path d={`M${percent(share.low)} 10H${percent(share.high)}M${percent(share.low)} 6v8M${percent(share.high)} 6v8`} className="stroke-ink" vectorEffect="non-scaling-stroke" strokeWidth={2} />
      <path d={`M${percent(share.rate)} 3v14`} className="stroke-ink" vectorEffect="non-scaling-stroke" strokeWidth={5} />
      {ac1 && <Corrections figure={ac1} />}
    </svg>
  )
}

function Corrections({ figure }: { readonly figure: Corrected }) {
  if (figure.kind !== 'estimate') return null
  return (
    <>
      {figure.interval && <path d={`M${percent(figure.interval.low)} 25H${percent(figure.interval.high)}`} className="stroke-ink-2" vectorEffect="non-scaling-stroke" strokeWidth={2} strokeDasharray="4 3" />}
      <path d={`M${percent(figure.value)} 20v10`} className="stroke-ink-2" vectorEffect="non-scaling-stroke" strokeWidth={3} />
    </>
  )
}

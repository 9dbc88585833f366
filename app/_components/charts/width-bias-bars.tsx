import type { WidthBias } from '@/lib/reports/agreement-widths'
import { signed } from '@/lib/reports/agreement-words'
import { biasText } from '@/lib/reports/gauge-study-words'
import { LEAST_TO_COMPARE } from '@/lib/reports/pass-rates'
import type { LengthUnit } from '@/lib/units/length'
import { FigureRows } from './figure-rows'

export type WidthBiasRow = { readonly key: string; readonly label: string; readonly widths: WidthBias }

type WidthBiasBarsProps = { readonly title: string; readonly groupWord: string; readonly rows: readonly WidthBiasRow[]; readonly units: LengthUnit }

const WORDS = 'The middle line is no difference. Heavy, the mean difference with its 95 % interval; thin, where 19 of 20 single widths lie.'
/** The drawing never shows less than this to either side, mm, so that a hair does not look like a bead. */
const LEAST_SCALE_MM = 0.5

/** By how much each reads over the other side, drawn on one scale and in figures. */
export function WidthBiasBars({ title, groupWord, rows, units }: WidthBiasBarsProps) {
  const scaleMm = Math.max(LEAST_SCALE_MM, ...rows.flatMap(({ widths: { found } }) => (found ? [Math.abs(found.limits.low), Math.abs(found.limits.high)] : [])))
  return (
    <FigureRows
      title={title} words={WORDS} heads={[groupWord, 'Reads over the others']} scale={['narrower', '0', 'wider']}
      rows={rows.map(({ key, label, widths }) => ({
        key, label, drawing: widths.found && <Drawing found={widths.found} scaleMm={scaleMm} />, figures: <Figures widths={widths} units={units} />,
      }))}
    />
  )
}

function Figures({ widths: { coupons, places, found }, units }: { readonly widths: WidthBias; readonly units: LengthUnit }) {
  return (
    <>
      {found ? <p className="figures text-lg">{biasText(found.bias, units)}</p> : <p>from {LEAST_TO_COMPARE} coupons on</p>}
      {found && <p className="text-base text-ink-2">single widths {signed(found.limits.low, units)} to {signed(found.limits.high, units)}</p>}
      <p className="text-base text-ink-2">{coupons} {coupons === 1 ? 'coupon' : 'coupons'}, {places} places</p>
    </>
  )
}

/** Stretches with its cell; lines keep their thickness. */
function Drawing({ found: { bias, limits }, scaleMm }: { readonly found: NonNullable<WidthBias['found']>; readonly scaleMm: number }) {
  const x = (mm: number): number => Math.round((50 + (mm / scaleMm) * 50) * 100) / 100
  return (
    <svg viewBox="0 0 100 24" preserveAspectRatio="none" aria-hidden="true" className="block h-6 w-full overflow-visible" fill="none">
      <path d="M50 0v24" className="stroke-ink" vectorEffect="non-scaling-stroke" />
      <path d={`M${x(limits.low)} 12H${x(limits.high)}M${x(limits.low)} 8v8M${x(limits.high)} 8v8`} className="stroke-ink-2" vectorEffect="non-scaling-stroke" strokeWidth={1.25} />
      <path d={`M${x(bias.low)} 12H${x(bias.high)}`} className="stroke-ink" vectorEffect="non-scaling-stroke" strokeWidth={5} />
      <path d={`M${x(bias.mean)} 4v16`} className="stroke-ink" vectorEffect="non-scaling-stroke" strokeWidth={2.5} />
    </svg>
  )
}

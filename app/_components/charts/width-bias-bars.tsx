import type { WidthBias } from '@/lib/reports/agreement-widths'
import { signed } from '@/lib/reports/agreement-words'
import { biasText } from '@/lib/reports/gauge-study-words'
import { LEAST_TO_COMPARE } from '@/lib/reports/pass-rates'
import type { LengthUnit } from '@/lib/units/length'
import { TableRegion } from '../ui/table-region'

export type WidthBiasRow = { readonly key: string; readonly label: string; readonly widths: WidthBias }

type WidthBiasBarsProps = { readonly title: string; readonly groupWord: string; readonly rows: readonly WidthBiasRow[]; readonly units: LengthUnit }

const WORDS = 'The middle line is no difference. Heavy, the mean difference with its 95 % interval; thin, where 19 of 20 single widths lie.'
/** The drawing never shows less than this to either side, mm, so that a hair does not look like a bead. */
const LEAST_SCALE_MM = 0.5

/** By how much each reads over the other side, drawn on one scale and in figures. */
export function WidthBiasBars({ title, groupWord, rows, units }: WidthBiasBarsProps) {
  const scaleMm = Math.max(LEAST_SCALE_MM, ...rows.flatMap(({ widths: { found } }) => (found ? [Math.abs(found.limits.low), Math.abs(found.limits.high)] : [])))
  return (
    <TableRegion label={title}>
      <table className="w-full border-collapse text-left">
        <caption className="pb-2 text-left">
          <span className="block font-head text-xl leading-tight font-semibold">{title}</span>
          <span className="block text-base text-ink-2">{WORDS}</span>
        </caption>
        <thead>
          <tr className="border-b-2 border-ink align-bottom">
            <th scope="col" className="py-2 pr-3 font-head text-lg leading-tight font-semibold">{groupWord}</th>
            <th scope="col" className="w-[30%] min-w-20 py-2 font-head text-lg leading-tight font-semibold">
              <span className="sr-only">Drawn</span>
              <span aria-hidden="true" className="flex justify-between text-base text-ink-2"><span>narrower</span><span>wider</span></span>
            </th>
            <th scope="col" className="py-2 pl-3 text-right font-head text-lg leading-tight font-semibold">Reads over the other</th>
          </tr>
        </thead>
        <tbody>
          {rows.map(({ key, label, widths }) => (
            <tr key={key} className="border-b border-line">
              <th scope="row" className="min-w-24 py-2 pr-3 leading-tight font-bold">{label}</th>
              <td className="py-2">{widths.found && <Drawing found={widths.found} scaleMm={scaleMm} />}</td>
              <td className="w-[45%] py-2 pl-3 text-right leading-tight">
                {widths.found ? (
                  <>
                    <span className="figures block text-lg">{biasText(widths.found.bias, units)}</span>
                    <span className="block text-base text-ink-2">single widths {signed(widths.found.limits.low, units)} to {signed(widths.found.limits.high, units)}</span>
                  </>
                ) : <span className="block">from {LEAST_TO_COMPARE} coupons on</span>}
                <span className="block text-base text-ink-2">{widths.coupons} {widths.coupons === 1 ? 'coupon' : 'coupons'}, {widths.places} places</span>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </TableRegion>
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

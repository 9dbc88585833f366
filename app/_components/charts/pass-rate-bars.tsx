import { drawings } from '@/lib/language/drawings'
import { say, type Locale } from '@/lib/language/say'
import { countText, shareText } from '@/lib/reports/share-text'
import { TableRegion } from '../ui/table-region'

export type PassRateRow = {
  readonly key: string
  readonly label: string
  readonly passed: number
  /** How many were judged; 0 where nobody has been yet. */
  readonly n: number
  /** The 95 % Wilson interval of the rate; null when there are too few to say one. */
  readonly interval: { readonly low: number; readonly high: number } | null
  /** Under the count: what is not in it, or that it is too small to compare. */
  readonly note?: string
}

type PassRateBarsProps = {
  /** 'Pass rate by class, this term' */
  readonly title: string
  /** 'Class' */
  readonly groupWord: string
  readonly rows: readonly PassRateRow[]
  readonly locale: Locale
}

/** Pass rates as bars with their intervals and counts, in a table that is its own text. A group of none has no bar, not a bar of 0. */
export function PassRateBars({ title, groupWord, rows, locale }: PassRateBarsProps) {
  return (
    <TableRegion label={title}>
      <table className="w-full border-collapse text-left">
        <caption className="pb-2 text-left">
          <span className="block font-head text-xl leading-tight font-semibold">{title}</span>
          <span className="block text-base text-ink-2">{say(drawings, locale, 'passRateNote')}</span>
        </caption>
        <thead>
          <tr className="border-b-2 border-ink align-bottom">
            <th scope="col" className="py-2 pr-3 font-head text-lg leading-tight font-semibold">
              {groupWord}
            </th>
            <th scope="col" className="w-[30%] min-w-24 py-2 font-head text-lg leading-tight font-semibold">
              {say(drawings, locale, 'passRate')}
              <span aria-hidden="true" className="flex justify-between text-base text-ink-2">
                <span>0</span>
                <span>50</span>
                <span>100 %</span>
              </span>
            </th>
            <th scope="col" className="py-2 pl-3 text-right font-head text-lg leading-tight font-semibold">
              {say(drawings, locale, 'passedWithInterval')}
            </th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.key} className="border-b border-line">
              <th scope="row" className="min-w-24 py-2 pr-3 leading-tight font-bold">
                {row.label}
              </th>
              <td className="py-2">
                {row.interval && <Bar rate={row.passed / row.n} low={row.interval.low} high={row.interval.high} />}
              </td>
              <td className="w-[45%] py-2 pl-3 text-right leading-tight">
                <span className="flex flex-wrap items-baseline justify-end gap-x-3">
                  <span className="figures text-lg whitespace-nowrap">
                    {row.n === 0 ? say(drawings, locale, 'nobodyYet') : say(drawings, locale, 'passedOf', { passed: countText(row.passed, locale), n: countText(row.n, locale) })}
                  </span>
                  {row.interval && (
                    <span className="text-base text-ink-2">
                      {shareText(row.passed / row.n)}{' '}
                      <span className="whitespace-nowrap">({say(drawings, locale, 'fromTo', { low: shareText(row.interval.low), high: shareText(row.interval.high) })})</span>
                    </span>
                  )}
                </span>
                {row.note && <span className="block text-base text-ink-2">{row.note}</span>}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </TableRegion>
  )
}

/** Stretches with its cell; lines keep their thickness. */
function Bar({ rate, low, high }: { readonly rate: number; readonly low: number; readonly high: number }) {
  const [at, from, to] = [rate * 100, low * 100, high * 100]
  return (
    <svg viewBox="0 0 100 24" preserveAspectRatio="none" aria-hidden="true" className="block h-6 w-full overflow-visible" fill="none">
      <path d="M0 0v24M50 0v24M100 0v24" className="stroke-line" vectorEffect="non-scaling-stroke" />
      <path d={`M0 5h${at}v14H0z`} className="fill-bead stroke-ink" vectorEffect="non-scaling-stroke" strokeWidth={1.25} />
      <path d={`M${from} 12H${to}M${from} 7v10M${to} 7v10`} className="stroke-ink" vectorEffect="non-scaling-stroke" strokeWidth={2} />
    </svg>
  )
}

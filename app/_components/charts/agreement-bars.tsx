import type { ReactNode } from 'react'
import type { AgreementFigures, Corrected } from '@/lib/reports/agreement-figures'
import { alikeText, correctedText, shareWithInterval } from '@/lib/reports/agreement-words'
import { TableRegion } from '../ui/table-region'

export type AgreementRow = {
  readonly key: string
  readonly label: ReactNode
  readonly figures: AgreementFigures
  /** Under the figures: who accepted alone, what was left out. */
  readonly note?: string
}

type AgreementBarsProps = {
  readonly title: string
  /** 'Rule', 'Readers' */
  readonly groupWord: string
  readonly rows: readonly AgreementRow[]
}

const WORDS = 'Above, how many of a hundred were alike; below, dashed, AC1; each with its 95 % interval. What lies under 0 is drawn at 0.'

/** How alike two sides judged, row by row, drawn and in figures: a table that is its own text. */
export function AgreementBars({ title, groupWord, rows }: AgreementBarsProps) {
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
              Alike
              <span aria-hidden="true" className="flex justify-between text-base text-ink-2"><span>0</span><span>50</span><span>100 %</span></span>
            </th>
            <th scope="col" className="py-2 pl-3 text-right font-head text-lg leading-tight font-semibold">Alike, AC1, kappa</th>
          </tr>
        </thead>
        <tbody>{rows.map((row) => <Row key={row.key} row={row} />)}</tbody>
      </table>
    </TableRegion>
  )
}

function Row({ row: { label, figures, note } }: { readonly row: AgreementRow }) {
  const share = shareWithInterval(figures)
  return (
    <tr className="border-b border-line">
      <th scope="row" className="min-w-24 py-2 pr-3 leading-tight font-bold">{label}</th>
      <td className="py-2"><Drawing figures={figures} /></td>
      <td className="w-[45%] py-2 pl-3 text-right leading-tight">
        <span className="flex flex-wrap items-baseline justify-end gap-x-3">
          <span className="figures text-lg whitespace-nowrap">{figures.compared === 0 ? 'none yet' : alikeText(figures)}</span>
          {share && <span className="text-base">{share}</span>}
        </span>
        {share && (
          <span className="block text-base text-ink-2">
            {figures.ac1.kind === 'few' ? `AC1 and kappa ${correctedText(figures.ac1)}` : <>AC1 {correctedText(figures.ac1)}, <span className="inline-block">kappa {correctedText(figures.kappa)}</span></>}
          </span>
        )}
        {note && <span className="block text-base text-ink-2">{note}</span>}
      </td>
    </tr>
  )
}

const percent = (value: number): number => Math.max(0, Math.min(100, value * 100))

/** Stretches with its cell; lines keep their thickness. */
function Drawing({ figures: { share, ac1 } }: { readonly figures: AgreementFigures }) {
  if (!share) return null
  return (
    <svg viewBox="0 0 100 32" preserveAspectRatio="none" aria-hidden="true" className="block h-8 w-full overflow-visible" fill="none">
      <path d="M0 0v32M50 0v32M100 0v32" className="stroke-line" vectorEffect="non-scaling-stroke" />
      <path d={`M${percent(share.low)} 10H${percent(share.high)}M${percent(share.low)} 6v8M${percent(share.high)} 6v8`} className="stroke-ink" vectorEffect="non-scaling-stroke" strokeWidth={2} />
      <path d={`M${percent(share.rate)} 3v14`} className="stroke-ink" vectorEffect="non-scaling-stroke" strokeWidth={5} />
      <Corrections figure={ac1} />
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

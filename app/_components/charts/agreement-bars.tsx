import type { AgreementFigures, Corrected } from '@/lib/reports/agreement-figures'
import { alikeText, correctedText, shareWithInterval } from '@/lib/reports/agreement-words'
import { FigureRows } from './figure-rows'

export type AgreementRow = {
  readonly key: string
  readonly label: string
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

const WORDS = 'Above, how many of a hundred were alike; below, dashed, AC1, where 100 is full agreement and 0 is chance or worse. Each with its 95 % interval.'

/** How alike two sides judged, row by row, drawn and in figures. */
export function AgreementBars({ title, groupWord, rows }: AgreementBarsProps) {
  return (
    <FigureRows
      title={title} words={WORDS} heads={[groupWord, 'Alike']} scale={['0', '50', '100 %']}
      rows={rows.map(({ key, label, figures, note }) => ({ key, label, drawing: <Drawing figures={figures} />, figures: <Figures figures={figures} note={note ?? ''} /> }))}
    />
  )
}

function Figures({ figures, note }: { readonly figures: AgreementFigures; readonly note: string }) {
  const share = shareWithInterval(figures)
  return (
    <>
      <p><span className="figures text-lg whitespace-nowrap">{figures.compared === 0 ? 'none yet' : alikeText(figures)}</span>{share && <span>, {share}</span>}</p>
      {share && <p className="text-base text-ink-2">{figures.ac1.kind === 'few' ? `AC1 and kappa ${correctedText(figures.ac1)}` : `AC1 ${correctedText(figures.ac1)}, kappa ${correctedText(figures.kappa)}`}</p>}
      {note && <p className="text-base text-ink-2">{note}</p>}
    </>
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

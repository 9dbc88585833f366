import type { AgreementFigures } from '@/lib/reports/agreement-figures'
import { alikeText, correctedText, shareWithInterval } from '@/lib/reports/agreement-words'
import { AgreementDrawing } from './agreement-drawing'
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
      rows={rows.map(({ key, label, figures, note }) => ({ key, label, drawing: <AgreementDrawing share={figures.share} ac1={figures.ac1} />, figures: <Figures figures={figures} note={note ?? ''} /> }))}
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

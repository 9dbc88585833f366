'use client'

import type { LookView } from '@/lib/reports/look-view'
import { BeadStrip } from '@/app/_components/weld/bead-strip'
import { Select, type Choice } from '@/app/_components/ui/select'
import { StatusLine } from '@/app/_components/ui/status-line'
import { VerdictMark } from '@/app/_components/ui/verdict-mark'
import { VerdictWord } from '@/app/_components/ui/verdict-word'

type PreviewPanelProps = {
  readonly look: LookView | null
  readonly state: 'fresh' | 'stale' | 'failed'
  readonly sample: string
  readonly samples: readonly Choice[]
  readonly onSample: (sample: string) => void
  /** How many boxes are empty or cannot be read. */
  readonly open: number
}

/** A sample coupon as the boxes would judge it. */
export function PreviewPanel({ look, state, sample, samples, onSample, open }: PreviewPanelProps) {
  return (
    <section aria-labelledby="preview" className="grid content-start gap-4">
      <h2 id="preview" className="text-2xl">On a sample coupon</h2>
      <Select label="Sample" value={sample} choices={samples} onChange={(event) => onSample(event.target.value)} />
      <StatusLine>
        {state === 'stale' && `${open === 1 ? 'One box is' : `${open} boxes are`} empty or cannot be read${look ? '; the coupon below is judged by what stood there before' : '. The coupon is drawn once they can'}.`}
        {state === 'failed' && 'The coupon could not be judged. Check the connection; what you typed is kept on this device.'}
      </StatusLine>
      {look && (
        <div className="grid gap-4">
          <p className="flex flex-wrap items-baseline justify-between gap-3">
            <VerdictWord verdict={look.scorecard.verdict} word={look.scorecard.verdictWord} size="medium" />
            <span>{look.scorecard.mark === null ? 'No mark' : `Mark ${look.scorecard.mark} of 100`}</span>
          </p>
          <BeadStrip {...look.strip} titleHidden />
          <ul className="divide-y divide-line border-y border-line">
            {look.scorecard.lines.filter(({ verdict }) => verdict !== 'not-applicable').map((line) => (
              <li key={line.rule} className="flex gap-3 py-2">
                <VerdictMark verdict={line.verdict} size="small" />
                <div className="min-w-0">
                  <p><span className="font-bold">{line.name}</span><span className="sr-only">: {line.verdictWord}.</span> {line.reading}, limit {line.limit}</p>
                  {line.verdict !== 'accept' && <p className="text-base">{line.sentence}</p>}
                </div>
              </li>
            ))}
          </ul>
        </div>
      )}
      <p className="text-base text-ink-2">The sample is invented. It shows what limits do, not what is usual.</p>
    </section>
  )
}

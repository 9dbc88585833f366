'use client'

import type { SampleReadingProblems, SampleReadings } from '@/lib/criteria/draft/sample-readings'
import type { LookView } from '@/lib/reports/look-view'
import { BeadStrip } from '@/app/_components/weld/bead-strip'
import { Select, type Choice } from '@/app/_components/ui/select'
import { TextInput } from '@/app/_components/ui/text-input'
import { StatusLine } from '@/app/_components/ui/status-line'
import { VerdictMark } from '@/app/_components/ui/verdict-mark'
import { VerdictWord } from '@/app/_components/ui/verdict-word'

type PreviewPanelProps = {
  readonly look: LookView | null
  readonly state: 'fresh' | 'stale' | 'failed'
  readonly sample: string
  readonly samples: readonly Choice[]
  readonly onSample: (sample: string) => void
  /** Readings typed over the sample's own, and what is wrong with them. */
  readonly typed: SampleReadings
  readonly wrong: SampleReadingProblems
  readonly onTyped: (typed: SampleReadings) => void
  /** How many boxes are empty or cannot be read. */
  readonly open: number
}

const BOXES = [['width', 'Width everywhere'], ['undercut', 'Undercut depth'], ['pore', 'Pore across']] as const satisfies readonly (readonly [keyof SampleReadings, string])[]

/** A sample coupon as the boxes would judge it, with readings of the author's own where they typed some. */
export function PreviewPanel({ look, state, sample, samples, onSample, typed, wrong, onTyped, open }: PreviewPanelProps) {
  return (
    <section aria-labelledby="preview" className="grid content-start gap-4">
      <h2 id="preview" className="text-2xl">On a sample coupon</h2>
      <Select label="Sample" value={sample} choices={samples} onChange={(event) => onSample(event.target.value)} />
      <fieldset className="grid gap-2">
        <legend className="mb-2 font-bold">Readings of your own</legend>
        <p className="text-base text-ink-2">Empty leaves what the sample has; 0 takes an undercut or a pore away.</p>
        <div className="grid items-start gap-3 sm:grid-cols-3">
          {BOXES.map(([name, label]) => (
            <TextInput key={name} figures label={label} value={typed[name]} error={wrong[name]} autoComplete="off" onChange={(event) => onTyped({ ...typed, [name]: event.target.value })} />
          ))}
        </div>
      </fieldset>
      <StatusLine>
        {state === 'stale' && open === 0 && 'A reading of your own cannot be read; the coupon below is judged with those before.'}
        {state === 'stale' && open > 0 && `${open === 1 ? 'One box is' : `${open} boxes are`} empty or cannot be read${look ? '; the coupon below is judged by what stood there before' : '. The coupon is drawn once they can'}.`}
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

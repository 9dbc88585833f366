import type { ComponentProps } from 'react'
import { BIAS_CONFIDENCE } from '@/lib/reports/gauge-study-figures'
import { RULE_OF_THUMB, type SpreadRow } from '@/lib/reports/gauge-study-words'
import { shareText } from '@/lib/reports/share-text'
import { GaugeStudySvg } from '../charts/gauge-study-svg'
import { Table } from '../ui/table'

type StudyResultProps = {
  /** What it says, the headline left out. */
  readonly words: readonly string[]
  readonly figures: null | {
    readonly spread: readonly SpreadRow[]
    readonly readers: readonly { readonly key: string; readonly name: string; readonly mean: string; readonly apart: string }[]
    readonly band: string | null
  }
  readonly drawing: ComponentProps<typeof GaugeStudySvg> | null
}

/** What a closed study says: in words, drawn, and in figures. */
export function StudyResult({ words, figures, drawing }: StudyResultProps) {
  return (
    <div className="grid gap-10">
      {words.length > 0 && <div className="grid max-w-prose gap-2 text-lg">{words.map((sentence) => <p key={sentence}>{sentence}</p>)}</div>}
      {drawing && <GaugeStudySvg {...drawing} />}
      {figures && <Figures {...figures} />}
    </div>
  )
}

function Figures({ spread, readers, band }: NonNullable<StudyResultProps['figures']>) {
  return (
    <>
      <section className="grid break-inside-avoid gap-3" aria-labelledby="apart">
        <h2 id="apart" className="text-2xl">Each reader against all</h2>
        <Table
          caption="Each reader against all" captionHidden
          columns={[{ key: 'who', head: 'Reader' }, { key: 'mean', head: 'Mean width', numeric: true }, { key: 'apart', head: 'Against the mean of all' }]}
          rows={readers.map(({ key, name, mean, apart }) => ({ key, cells: [name, mean, apart] }))}
        />
        <p className="max-w-prose text-base text-ink-2">
          The mean over the coupons, with its {shareText(BIAS_CONFIDENCE)} interval. Where the interval holds 0, the difference may be chance. Nobody knows the true width: the mean of all is only what the readers say together.
        </p>
      </section>
      <section className="grid break-inside-avoid gap-3" aria-labelledby="spread">
        <h2 id="spread" className="text-2xl">Where the spread comes from</h2>
        <Table
          caption="Where the spread comes from" captionHidden
          columns={[
            { key: 'source', head: 'Source' }, { key: 'variance', head: 'Share of the variance', numeric: true }, { key: 'deviation', head: 'Standard deviation', numeric: true },
            { key: 'all', head: 'Share of that of all readings', numeric: true }, ...(band === null ? [] : [{ key: 'band', head: 'Share of the band', numeric: true }]),
          ]}
          rows={spread.map(({ key, source, variance, deviation, ofAll, ofBand }) => ({ key, cells: [source, variance, deviation, ofAll, ...(band === null ? [] : [ofBand ?? '–'])] }))}
        />
        <div className="grid max-w-prose gap-2 text-base text-ink-2">
          <p>{RULE_OF_THUMB}</p>
          <p>{band === null ? 'There is no share of a band: the criteria do not set a least and a most width that is the same for every coupon here.' : `The band is what the criteria allow, ${band}.`}</p>
          <p>Shares of the variance add up. Shares of standard deviations do not.</p>
        </div>
      </section>
    </>
  )
}

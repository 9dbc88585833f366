import { mm, toInches, type LengthUnit } from '../units/length'
import { fixed } from '../units/quantity'
import type { GaugeFigures, ReaderBias } from './gauge-study-figures'

type Figures = Extract<GaugeFigures, { kind: 'figures' }>
type Part = 'grader' | 'interaction' | 'repeatability'

/** A spread or a difference of widths: '0.012 in', '0.31 mm'. Never rounded to a step of the gauge, as a width is. */
export function spreadText(valueMm: number, units: LengthUnit): string {
  return units === 'in' ? `${fixed(toInches(mm(valueMm)), 3)} in` : `${fixed(valueMm, 2)} mm`
}

/** A share of 100 or more: '24 %', '<1 %'. Of a band it may pass 100. */
export function percentText(percent: number): string {
  return percent > 0 && percent < 1 ? '<1 %' : `${fixed(percent, 0)} %`
}

const WHERE: Readonly<Record<Part, string>> = {
  grader: 'one reader against another: agree on where the toe is, then repeat.',
  interaction: 'readers who part on some coupons and not on others: look at those coupons together, then repeat.',
  repeatability: 'a reader against their own other rounds: set the gauge down the same way each time, then repeat.',
}

/** What the study says, the most telling sentence first. */
export function gaugeWords(figures: Figures, units: LengthUnit): string[] {
  const { study: { variances, percentOfStudy, distinctCategories }, percentOfBand } = figures
  const spread = `The measuring has a standard deviation of ${spreadText(Math.sqrt(variances.gauge), units)}, ${percentText(percentOfStudy)} of that of all readings`
  return [
    headline(figures),
    `${spread}${percentOfBand === null ? '.' : `; six of them fill ${percentText(percentOfBand)} of the band the width may lie in.`}`,
    ...(distinctCategories === null ? [] : [
      distinctCategories < 2 ? 'The coupons cannot be told apart by such readings.' : `Read like this, about ${Math.floor(distinctCategories)} sizes of bead can be told apart.`,
    ]),
    ...readerWords(figures.readers, units),
    ...cautions(figures),
  ]
}

function headline({ study: { variances } }: Figures): string {
  const { grader, interaction, repeatability, gauge, part } = variances
  if (gauge === 0) return 'Readers and rounds do not differ at all: as finely as the gauge was read, the measuring adds nothing.'
  const parts: readonly (readonly [Part, number])[] = [['grader', grader], ['interaction', interaction], ['repeatability', repeatability]]
  const [largest] = [...parts].sort(([, a], [, b]) => b - a)
  const where = WHERE[largest?.[0] ?? 'repeatability']
  return part > gauge ? `Most of the spread is the coupons themselves. Of what the measuring adds, most is ${where}` : `Most of the spread is ${where}`
}

function readerWords(readers: readonly ReaderBias[], units: LengthUnit): string[] {
  return readers.flatMap(({ name, bias }) => {
    if (bias.low <= 0 && bias.high >= 0) return []
    return `${name} reads ${spreadText(Math.abs(bias.mean), units)} ${bias.mean > 0 ? 'wider' : 'narrower'} than the mean of all.`
  })
}

/** From these on the figures are less of a guess. Common practice in such studies is 10 coupons, 3 readers and 2 or 3 rounds; from memory. */
const SOLID = { coupons: 5, readers: 3 }

function cautions({ coupons, readers, leftOut, roundsLeftOut, study }: Figures): string[] {
  const few = [coupons < SOLID.coupons && `${coupons} coupons`, readers.length < SOLID.readers && `${readers.length} readers`].filter(Boolean).join(' and ')
  return [
    ...(few === '' ? [] : [`With ${few} these figures are rough.`]),
    ...(study.interaction.pooled ? ['Whether readers part more on some coupons than on others cannot be told from chance here, so that is counted as repeatability.'] : []),
    ...leftOut.map(({ name }) => `${name} did not read enough whole rounds and is left out of the figures.`),
    ...(roundsLeftOut === 0 ? [] : [`${roundsLeftOut === 1 ? 'One round is' : `${roundsLeftOut} rounds are`} left out, because too few readers read ${roundsLeftOut === 1 ? 'it' : 'them'} whole.`]),
  ]
}

/** A signed difference with its interval: '+0.020 in (+0.011 to +0.029)'. */
export function biasText({ mean, low, high }: ReaderBias['bias'], units: LengthUnit): string {
  const signed = (value: number): string => {
    const text = spreadText(value, units)
    return value > 0 && /[1-9]/.test(text) ? `+${text}` : text.replace(/^-/, '−')
  }
  const bare = (value: number): string => signed(value).replace(/ (in|mm)$/, '')
  return `${signed(mean)} (${bare(low)} to ${bare(high)})`
}

export type SpreadRow = { readonly key: string; readonly source: string; readonly variance: string; readonly deviation: string; readonly ofAll: string; readonly ofBand: string | null }

/** Where the spread comes from, a row each. `variance`: share of the variance; they add up. `ofAll`, `ofBand`: of standard deviations; they do not. */
export function spreadRows({ study: { variances, interaction }, percentOfBand }: Figures, units: LengthUnit): SpreadRow[] {
  const share = (value: number): number => (100 * value) / variances.total
  const row = (key: string, source: string, variance: number): SpreadRow => ({
    key, source, variance: percentText(share(variance)), deviation: spreadText(Math.sqrt(variance), units), ofAll: percentText(100 * Math.sqrt(variance / variances.total)),
    // The band's share of the whole gauge says how many sixfold deviations fit; each source takes its part of it.
    ofBand: percentOfBand === null || key === 'all' || key === 'coupons' ? null : percentText(variances.gauge === 0 ? 0 : percentOfBand * Math.sqrt(variance / variances.gauge)),
  })
  return [
    row('measuring', 'The measuring in all', variances.gauge),
    row('repeatability', 'Repeatability: a reader against their own other rounds', variances.repeatability),
    row('readers', 'Reproducibility: one reader against another', variances.grader),
    ...(interaction.pooled ? [] : [row('interaction', 'Reader by coupon: readers who part on some coupons', variances.interaction)]),
    row('coupons', 'The coupons themselves', variances.part),
    row('all', 'All readings', variances.total),
  ]
}

/** The usual rule of thumb, with its source. */
export const RULE_OF_THUMB = 'Rule of thumb: measuring that takes under 10 % of the standard deviation or of the band is good, 10 to 30 % may do for the purpose, over 30 % needs mending. Source: AIAG, Measurement Systems Analysis, 4th ed. 2010; these three limits from memory. The division itself is that handbook’s analysis of variance.'

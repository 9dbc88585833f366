import type { CsvCell } from '../interchange/csv'
import type { AgreementReport, Compared } from './agreement'
import type { AgreementFigures, Corrected } from './agreement-figures'
import type { WidthBias } from './agreement-widths'

const HEADER = [
  'between', 'first', 'second', 'about', 'compared', 'alike', 'rate', 'low_95', 'high_95', 'only_first_accepts', 'only_second_accepts', 'left_out',
  'ac1', 'ac1_low_95', 'ac1_high_95', 'kappa', 'kappa_low_95', 'kappa_high_95', 'kappa_note',
  'width_coupons', 'width_places', 'width_bias_mm', 'bias_low_95', 'bias_high_95', 'single_low_95', 'single_high_95',
]

/** The agreement of the coordinator's screen as rows for a file, header first: all together, each pair, each reader's widths against all others. */
export function agreementRows({ all, pairs, readers }: AgreementReport, nameOf: (readerId: string) => string): (readonly CsvCell[])[] {
  return [
    HEADER,
    ...rowsOf('all', ['', ''], all, null),
    ...pairs.flatMap((pair) => rowsOf('pair', [nameOf(pair.readerIds[0]), nameOf(pair.readerIds[1])], pair, pair.widths)),
    ...readers.map(({ readerId, widths }): CsvCell[] => ['reader and all others', nameOf(readerId), '', 'width', ...Array<null>(15).fill(null), ...widthCells(widths)]),
  ]
}

function rowsOf(between: string, [first, second]: readonly [string, string], { verdicts, rules }: Pick<Compared, 'verdicts' | 'rules'>, widths: WidthBias | null): CsvCell[][] {
  return [
    [between, first, second, 'whole coupon', ...figureCells(verdicts), ...widthCells(widths)],
    ...rules.map(({ rule, figures }): CsvCell[] => [between, first, second, rule, ...figureCells(figures), ...widthCells(null)]),
  ]
}

function figureCells({ compared, alike, share, onlyFirst, onlySecond, leftOut, ac1, kappa }: AgreementFigures): CsvCell[] {
  return [
    compared, alike, share && decimals(share.rate), share && decimals(share.low), share && decimals(share.high), onlyFirst.length, onlySecond.length, leftOut,
    ...corrected(ac1), ...corrected(kappa), kappa.kind === 'few' ? 'too few' : kappa.kind === 'all-the-same' ? 'every verdict was the same' : null,
  ]
}

function corrected(figure: Corrected): CsvCell[] {
  if (figure.kind !== 'estimate') return [null, null, null]
  return [decimals(figure.value), figure.interval && decimals(figure.interval.low), figure.interval && decimals(figure.interval.high)]
}

function widthCells(widths: WidthBias | null): CsvCell[] {
  if (!widths) return Array<null>(7).fill(null)
  const { coupons, places, found } = widths
  return [coupons, places, ...(found ? [found.bias.mean, found.bias.low, found.bias.high, found.limits.low, found.limits.high].map(decimals) : Array<null>(5).fill(null))]
}

const decimals = (value: number): number => Math.round(value * 10_000) / 10_000

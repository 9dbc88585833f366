import { program } from '@/lib/language/program'
import { say, type Locale } from '@/lib/language/say'
import { drawReliability } from '@/lib/reports/reliability-diagram'
import { shareText } from '@/lib/reports/share-text'
import type { JudgedForecasts, WereWeRight } from '@/lib/reports/were-we-right'
import { Axes } from '@/app/_components/charts/axes'
import { ChartFigure } from '@/app/_components/charts/chart-figure'

type PanelProps = { readonly found: WereWeRight; readonly locale: Locale }

/** Whether the chances that were given to tests came true, said as firmly as the number of tests allows. */
export function WereWeRightPanel({ found, locale }: PanelProps) {
  const told = (key: keyof typeof program.en, values?: Record<string, string | number>): string => say(program, locale, key, values)
  return (
    <section className="grid gap-4">
      <h2 className="text-2xl">{told('rightHead')}</h2>
      {found.kind === 'few' ? <p className="max-w-prose text-lg">{told('rightFew', { n: found.n, passed: found.passed, least: found.least })}</p> : (
        <>
          <div className="grid max-w-prose gap-2">{sentencesOf(found, locale).map((sentence, i) => <p key={sentence} className={i === 0 ? 'text-lg' : undefined}>{sentence}</p>)}</div>
          <Reliability found={found} locale={locale} />
        </>
      )}
      <div className="max-w-prose text-base text-ink-2">
        {found.withoutForecast > 0 && <p>{told('withoutForecast', { n: found.withoutForecast })}</p>}
        <p>{told('uncorrected')}</p>
      </div>
    </section>
  )
}

function sentencesOf(found: JudgedForecasts, locale: Locale): string[] {
  const told = (key: keyof typeof program.en, values?: Record<string, string | number>): string => say(program, locale, key, values)
  const { line, passRate, brier, brierOfPassRate } = found
  const three = (value: number): string => value.toFixed(3)
  const two = (value: number): string => value.toFixed(2)
  return [
    told('rightAnswer', { n: found.n, mean: two(found.meanForecast), rate: two(passRate.rate), low: two(passRate.low), high: two(passRate.high) }),
    told(three(brier) < three(brierOfPassRate) ? 'brierBetter' : 'brierWorse', { brier: three(brier), guess: three(brierOfPassRate) }),
    told('middleHalf', { low: two(found.middleHalf.low), high: two(found.middleHalf.high) }),
    ...(line
      ? [
          told('lineAnswer', {
            slope: two(line.slope), slopeLow: two(line.slopeInterval.low), slopeHigh: two(line.slopeInterval.high),
            intercept: two(line.intercept), interceptLow: two(line.interceptInterval.low), interceptHigh: two(line.interceptInterval.high),
          }),
          told(found.consistent ? 'lineConsistent' : 'lineOff'),
        ]
      : [told('lineNone')]),
    ...(found.stillFew ? [told('rightStill')] : []),
  ]
}

/** The same scale both ways: what was said came true where a point touches the diagonal. */
const FRAME = { width: 420, height: 420, left: 44, right: 404, top: 14, bottom: 374 }

function Reliability({ found, locale }: { readonly found: JudgedForecasts; readonly locale: Locale }) {
  const told = (key: keyof typeof program.en, values?: Record<string, string | number>): string => say(program, locale, key, values)
  const drawn = drawReliability(found.bins, FRAME)
  return (
    <div className="max-w-lg">
      <ChartFigure
        title={told('binsTitle')} titleHidden={false} summary={told('binsSummary')}
        drawing={
          <svg viewBox={`0 0 ${FRAME.width} ${FRAME.height}`} role="img" aria-label={`${told('binsTitle')}. ${told('binsSummary')}`} className="block h-auto w-full">
            <Axes frame={FRAME} xTicks={drawn.xTicks} yTicks={drawn.yTicks} xWord={told('saidAxis')} />
            <path d={drawn.diagonal} fill="none" className="stroke-ink-2" strokeWidth={1.5} strokeDasharray="7 5" />
            {drawn.bins.map((bin) => (
              <g key={bin.x}>
                <path d={`M${bin.x},${bin.yLow}V${bin.yHigh}m-5,0h10M${bin.x - 5},${bin.yLow}h10`} fill="none" className="stroke-ink" strokeWidth={1.5} />
                <circle cx={bin.x} cy={bin.y} r={5} className="fill-ink stroke-paper" strokeWidth={1.5} />
                <text x={bin.x + 9} y={bin.y + 5} strokeWidth={4} className="figures fill-ink stroke-paper text-[15px] [paint-order:stroke]">{bin.count}</text>
              </g>
            ))}
          </svg>
        }
        table={{
          open: told('showTable'),
          columns: [
            { key: 'said', head: told('binSaid') }, { key: 'mean', head: told('binMean'), numeric: true }, { key: 'tests', head: told('binTests'), numeric: true },
            { key: 'passed', head: told('binPassed'), numeric: true }, { key: 'interval', head: told('binInterval'), numeric: true },
          ],
          rows: found.bins.map((bin) => ({
            key: String(bin.from),
            cells: [
              told('fromTo', { low: bin.from.toFixed(1), high: bin.to.toFixed(1) }), bin.meanForecast.toFixed(2), bin.count, shareText(bin.observed),
              told('fromTo', { low: shareText(bin.interval.low), high: shareText(bin.interval.high) }),
            ],
          })),
        }}
      />
    </div>
  )
}

import { NARROW_CHART, WIDE_CHART } from '@/lib/reports/chart-frame'
import { drawReadinessTrack } from '@/lib/reports/readiness-track'
import { ChartFigure } from './chart-figure'
import { ReadinessTrackDrawing } from './readiness-track-drawing'
import { readinessTrackWords, type ReadinessTrackProps } from './readiness-track-words'

/** The chance of passing after each coupon, with its interval, as plain SVG: for paper and for screens without JavaScript. */
export function ReadinessTrackSvg({ titleHidden = false, ...props }: ReadinessTrackProps) {
  const words = readinessTrackWords(props)
  return (
    <ChartFigure
      title={words.title}
      titleHidden={titleHidden}
      summary={words.summary}
      drawing={{
        narrow: <ReadinessTrackDrawing track={drawReadinessTrack(props, NARROW_CHART)} words={words} />,
        wide: <ReadinessTrackDrawing track={drawReadinessTrack(props, WIDE_CHART)} words={words} />,
      }}
      table={words.table}
    />
  )
}

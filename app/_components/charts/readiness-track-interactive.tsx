'use client'

import { lazy, Suspense, useSyncExternalStore } from 'react'
import { ChartFigure } from './chart-figure'
import { ReadinessTrackSvg } from './readiness-track-svg'
import { readinessTrackWords, type ReadinessTrackProps } from './readiness-track-words'

const Plot = lazy(() => import('./readiness-track-plot'))

/**
 * The readiness track with the figures of each coupon under the pointer or the arrow keys. The plain drawing stands in its place on
 * the server and until the plotting library has come; that library draws nothing on the server and must stay out of print pages.
 */
export function ReadinessTrackInteractive(props: ReadinessTrackProps) {
  const inBrowser = useSyncExternalStore(
    () => () => {},
    () => true,
    () => false,
  )
  const still = <ReadinessTrackSvg {...props} />
  if (!inBrowser) return still
  const words = readinessTrackWords(props)
  return (
    <Suspense fallback={still}>
      <ChartFigure title={words.title} titleHidden={props.titleHidden ?? false} summary={words.summary} drawing={<Plot {...props} words={words} />} table={words.table} />
    </Suspense>
  )
}

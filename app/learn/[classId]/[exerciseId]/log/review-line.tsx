'use client'

import { logPad } from '@/lib/language/log-pad'
import { readingsWords } from '@/lib/language/readings'
import { say, type Locale } from '@/lib/language/say'
import { INDICATION_KINDS } from '@/lib/scoring/types'
import { sizesFilled } from '@/lib/reports/next-size'
import type { ReadingsForm, StationBox } from '@/lib/schemas/readings'
import { readSize } from '@/app/_components/readings/read-size'

type Props = {
  readonly locale: Locale
  readonly units: 'in' | 'mm'
  readonly boxes: readonly StationBox[]
  readonly vertical: boolean
  readonly readings: ReadingsForm
  readonly passes: number
  /** An arc timer still runs. */
  readonly running: boolean
}

/** What is about to be sent, in a line, and what is not measured yet. */
export function ReviewLine({ locale, units, boxes, vertical, readings, passes, running }: Props) {
  const told = (key: Parameters<typeof say<keyof typeof logPad.en>>[2], values: Record<string, string | number> = {}): string => say(logPad, locale, key, values)
  const { indications } = readings
  // What cannot be read measures nothing: the server will say so at its box.
  const stations = readings.stations.map((station) => ({ ...station, ...Object.fromEntries(boxes.filter((box) => readSize(station[box], units) === null).map((box) => [box, ''])) }))
  const missing = boxes.flatMap((box) => {
    const at = stations.flatMap((station, index) => (sizesFilled([station], [box]).filled === 0 ? [index + 1] : []))
    const size = say(readingsWords, locale, vertical && (box === 'legA' || box === 'legB') ? (`${box}Vertical` as const) : box)
    return at.length === 0 ? [] : [at.length === stations.length ? size : told('missingAt', { size, stations: at.join(', ') })]
  })
  const answered = new Set([...readings.lookedFor, ...indications.map((each) => each.kind)]).size
  const isIncomplete = missing.length > 0 || answered < INDICATION_KINDS.length || readings.cratersFilled === null || readings.fusionComplete === null
  const line = [
    told('reviewSizes', sizesFilled(stations, boxes)),
    indications.length === 0 ? told('reviewSeenNone') : told(indications.length === 1 ? 'reviewSeenOne' : 'reviewSeen', { n: indications.length }),
    told('reviewLooked', { n: answered, of: INDICATION_KINDS.length }),
    told(passes === 1 ? 'reviewPassesOne' : 'reviewPasses', { n: passes }),
  ]
  return (
    <section aria-label={told('review')} className="border-y border-line py-3">
      <p className="eyebrow">{told('review')}</p>
      <p className="text-lg">{line.join(' · ')}</p>
      {missing.length > 0 && <p>{told('reviewMissing', { sizes: missing.join('; ') })}</p>}
      {isIncomplete && <p className="text-ink-2">{told('reviewIncomplete')}</p>}
      {running && <p className="font-bold">{told('reviewRunning')}</p>}
    </section>
  )
}

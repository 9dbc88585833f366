'use client'

import { useEffect, useRef } from 'react'
import { droppedPairWords, photoGauge } from '@/lib/language/photo-gauge'
import { say, type Locale } from '@/lib/language/say'
import { bandCall } from '@/lib/measure/band-call'
import type { PhotoMeasurement } from '@/lib/measure/photo-measurement'
import { MOST_LENGTH_OFF, widthsAtStations, type StationWidth } from '@/lib/measure/widths-at-stations'
import type { PhotoTask } from '@/lib/measure/widths-into-form'
import { uncertaintyText } from '@/lib/measure/uncertainty-text'
import { formatForReader } from '@/lib/units/display'
import { Button } from '../ui/button'
import { Notice } from '../ui/notice'
import { Table } from '../ui/table'

/** form: the widths go into the form. second: they are kept beside those already submitted, by row of the look; null was not measured. */
export type Purpose = { readonly kind: 'form' } | { readonly kind: 'second'; readonly submittedMm: readonly (number | null)[] }

type Props = {
  readonly locale: Locale
  readonly task: PhotoTask
  readonly measurement: PhotoMeasurement
  readonly purpose: Purpose
  readonly onBack: () => void
  readonly onAccept: (widths: readonly StationWidth[]) => void
}

/** The widths with their uncertainty, against the band, before they go into the form. */
export function WidthsScreen({ locale, task, measurement, purpose, onBack, onAccept }: Props) {
  const told = (key: keyof typeof photoGauge.en, values: Readonly<Record<string, string | number>> = {}): string => say(photoGauge, locale, key, values)
  const shown = (mm: number): string => formatForReader(mm, task.units)
  const head = useRef<HTMLDivElement>(null)
  useEffect(() => head.current?.focus(), [])
  const { filled, dropped, lengthOff } = widthsAtStations(measurement, task.places.map(({ atMm }) => atMm), task.weldLengthMm)
  const byStation = new Map(filled.map((each) => [each.station, each]))
  const callOf = ({ widthMm, widthSdMm }: StationWidth) => task.band && bandCall(widthMm, widthSdMm, task.band)
  const unsure = filled.filter((each) => callOf(each) === 'cannot-tell')
  const submittedAt = (row: number): string | null => {
    if (purpose.kind === 'form') return null
    const mm = purpose.submittedMm[row]
    return told('submittedWidth', { width: mm == null ? told('notMarked') : shown(mm) })
  }
  const rows = task.places.map(({ row }, station) => {
    const width = byStation.get(station)
    const call = width && callOf(width)
    return {
      key: String(row),
      cells: [<Station key="station" name={told('station', { n: row + 1 })} submitted={submittedAt(row)} />, width ? told('plusMinus', { width: shown(width.widthMm), error: uncertaintyText(width.widthSdMm, task.units) }) : told('notMarked'), call ? told(call) : ''],
    }
  })
  return (
    <div ref={head} tabIndex={-1} className="mx-auto grid w-full max-w-3xl content-start gap-4 overflow-y-auto p-4 outline-none">
      {purpose.kind === 'second' && <Notice kind="info" word={told('secondWord')}>{told('secondWhy')}</Notice>}
      <Table caption={told('widths')} columns={[{ key: 'station', head: told('place') }, { key: 'width', head: told('width'), numeric: true }, { key: 'call', head: told('band') }].slice(0, task.band ? 3 : 2)} rows={rows} />
      {task.band === null && <p>{told('noBand')}</p>}
      <p>{told('measuredAt', { length: shown(measurement.length.mm) })}</p>
      {Math.abs(lengthOff) > MOST_LENGTH_OFF && <Notice kind="problem" word={told('lengthWord')}>{told('lengthWhy', { measured: shown(measurement.length.mm), real: shown(task.weldLengthMm) })}</Notice>}
      {unsure.length > 0 && <Notice kind="info" word={told('cannotTellWord')}>{told('cannotTellWhy', { stations: unsure.map(({ station }) => told('station', { n: (task.places[station]?.row ?? 0) + 1 })).join(', ') })}</Notice>}
      {dropped.length > 0 && (
        <Notice kind="info" word={told('droppedWord')}>
          <ul>{dropped.map(({ pair, reason }) => <li key={pair}>{told('droppedPair', { n: pair + 1, why: say(droppedPairWords, locale, reason) })}</li>)}</ul>
        </Notice>
      )}
      <p className="text-ink-2">{told('errorNote')}</p>
      <div className="flex flex-wrap gap-2">
        {filled.length > 0 && <Button kind="primary" onClick={() => onAccept(filled)}>{told(purpose.kind === 'form' ? 'accept' : 'acceptSecond')}</Button>}
        <Button onClick={onBack}>{told('backToMarks')}</Button>
      </div>
    </div>
  )
}

function Station({ name, submitted }: { readonly name: string; readonly submitted: string | null }) {
  return <>{name}{submitted && <span className="block text-base font-normal text-ink-2">{submitted}</span>}</>
}

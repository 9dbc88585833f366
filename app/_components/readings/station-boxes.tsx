'use client'

import { useId, useState, type KeyboardEvent } from 'react'
import { logPad } from '@/lib/language/log-pad'
import { readingsWords } from '@/lib/language/readings'
import { say } from '@/lib/language/say'
import { nextSizeToFill, sizesFilled, type SizePlace } from '@/lib/reports/next-size'
import type { StationBox, TypedStation } from '@/lib/schemas/readings'
import { Button } from '../ui/button'
import { classes } from '../ui/classes'
import { FieldError } from '../ui/field'
import type { EditorProps } from './editor-props'
import { PadDock } from './pad-dock'
import { SizeBox } from './size-box'

type Box = StationBox | 'at'
type Place = SizePlace<StationBox>

/** So many stations side by side: on a phone boxes of 48 px and more, from 768 px up as many as there are. */
const COLUMNS: Readonly<Record<number, string>> = {
  1: 'grid-cols-3 md:grid-cols-8', 2: 'grid-cols-3 md:grid-cols-8', 3: 'grid-cols-3 md:grid-cols-8', 4: 'grid-cols-4 md:grid-cols-8',
  5: 'grid-cols-5 md:grid-cols-8', 6: 'grid-cols-3 md:grid-cols-8', 7: 'grid-cols-4 md:grid-cols-8', 8: 'grid-cols-4 md:grid-cols-8',
}
const MANY = 'grid-cols-5 md:grid-cols-10'

/** The sizes at each station: a row for each size, so that one gauge is in hand at a time, and a pad that fills box after box. */
export function StationBoxes({ locale, boxes, vertical, frame, value, onChange, errors }: EditorProps) {
  const id = useId()
  const { stations } = value
  const [chosen, setChosen] = useState<Place | 'first' | null>('first')
  const [typing, setTyping] = useState(false)
  const [more, setMore] = useState(false)
  const active = chosen === 'first' ? nextSizeToFill(stations, boxes, null) : chosen !== null && chosen.station < stations.length ? chosen : null

  const taken = frame.offered.filter((box) => more || stations.some((row) => row[box]))

  const label = (box: Box): string => say(readingsWords, locale, vertical && (box === 'legA' || box === 'legB') ? (`${box}Vertical` as const) : box)
  const idOf = (box: Box, station: number): string => `${id}-${station}-${box}`
  const written = (box: Box, station: number, text: string): readonly TypedStation[] => stations.map((row, at) => (at === station ? { ...row, [box]: text } : row))
  const write = (rows: readonly TypedStation[]): void => onChange({ ...value, stations: [...rows] })

  function put(place: Place, text: string): void {
    const rows = written(place.box, place.station, text)
    const next = text === '' ? place : nextSizeToFill(rows, boxes, place)
    write(rows)
    setChosen(next)
    // After the tap is answered: measuring the page in between would lay it out twice.
    if (next) window.setTimeout(() => document.getElementById(idOf(next.box, next.station))?.scrollIntoView({ block: 'nearest' }))
  }

  function goOn(event: KeyboardEvent, place: Place): void {
    if (event.key !== 'Enter') return
    event.preventDefault() // Enter in a size is "next", never "send"
    const next = nextSizeToFill(stations, boxes, place)
    if (next) document.getElementById(idOf(next.box, next.station))?.focus()
  }

  const row = (box: Box) => {
    const wrong = stations.flatMap((_, index) => (errors[`stations.${index}.${box}`] ? [index] : []))
    const { filled, of } = sizesFilled(stations, [box])
    return (
      <div key={box} role="group" aria-label={label(box)} className="grid gap-1">
        <div className="flex items-baseline justify-between gap-3">
          <span className="font-head text-xl leading-tight font-semibold">{label(box)}</span>
          {box !== 'at' && <span className="figures text-ink-2">{say(logPad, locale, 'count', { filled, of })}</span>}
        </div>
        <div className={classes('grid gap-x-2 gap-y-2', COLUMNS[stations.length] ?? MANY)}>
          {stations.map((station, index) => (
            <SizeBox
              key={index} id={idOf(box, index)} number={index + 1} label={say(logPad, locale, 'sizeAt', { size: label(box), n: index + 1 })} value={station[box] ?? ''}
              active={box === active?.box && index === active.station} errorId={wrong.includes(index) ? `${idOf(box, index)}-error` : undefined}
              inputMode={typing || box === 'at' || frame.pads[box] === undefined ? 'text' : 'none'}
              onChange={(event) => write(written(box, index, event.target.value))}
              onFocus={() => { if (box !== 'at') setChosen({ station: index, box }) }}
              onKeyDown={(event) => { if (box !== 'at') goOn(event, { station: index, box }) }}
            />
          ))}
        </div>
        {wrong.map((index) => (
          <FieldError key={index} id={`${idOf(box, index)}-error`}>{say(readingsWords, locale, 'station', { n: index + 1 })}: {errors[`stations.${index}.${box}`]}</FieldError>
        ))}
      </div>
    )
  }

  return (
    <div className="grid gap-4">
      <div className="grid gap-4">
        {boxes.map(row)}
        <PadDock
          locale={locale} frame={frame} stations={stations} active={active} label={label} typing={typing} onPut={put}
          onTyping={(wanted) => {
            setTyping(wanted)
            // The box must ask for a keyboard before it gets the focus.
            if (wanted && active) window.setTimeout(() => document.getElementById(idOf(active.box, active.station))?.focus())
          }}
        />
      </div>
      {row('at')}
      {taken.length > 0 && <p className="text-ink-2">{say(readingsWords, locale, 'moreSizesHint')}</p>}
      {taken.map(row)}
      <div className="flex flex-wrap gap-2">
        <Button onClick={() => write([...stations, empty(stations[0])])}>{say(readingsWords, locale, 'addStation')}</Button>
        {taken.length < frame.offered.length && <Button onClick={() => setMore(true)}>{say(readingsWords, locale, 'moreSizes')}</Button>}
        {stations.length > 1 && <Button onClick={() => write(stations.slice(0, -1))}>{say(readingsWords, locale, 'removeStation', { n: stations.length })}</Button>}
      </div>
    </div>
  )
}

const empty = (like: TypedStation | undefined): TypedStation =>
  Object.fromEntries(Object.keys(like ?? {}).map((box) => [box, ''])) as TypedStation

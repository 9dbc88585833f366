'use client'

import { useId } from 'react'
import { readingsWords } from '@/lib/language/readings'
import { say } from '@/lib/language/say'
import type { StationBox, TypedStation } from '@/lib/schemas/readings'
import { Button } from '../ui/button'
import { classes } from '../ui/classes'
import { FieldError } from '../ui/field'
import type { EditorProps } from './editor-props'
import { SizeBox } from './size-box'

type Box = StationBox | 'at'

/** From 768 px: the station's number, then its boxes in one row, so many of them. */
const ROW: Readonly<Record<number, string>> = {
  2: 'md:grid-cols-[6rem_repeat(2,minmax(0,1fr))]', 3: 'md:grid-cols-[6rem_repeat(3,minmax(0,1fr))]', 4: 'md:grid-cols-[6rem_repeat(4,minmax(0,1fr))]',
  5: 'md:grid-cols-[6rem_repeat(5,minmax(0,1fr))]', 6: 'md:grid-cols-[6rem_repeat(6,minmax(0,1fr))]', 7: 'md:grid-cols-[6rem_repeat(7,minmax(0,1fr))]',
}
const MOST_IN_A_ROW = 7

/** The sizes at each station, typed as the gauge says them. */
export function StationBoxes({ locale, boxes, vertical, value, onChange, errors }: EditorProps) {
  const id = useId()
  const { stations } = value
  const all: readonly Box[] = ['at', ...boxes]
  const row = classes('grid grid-cols-6 items-end gap-x-3 gap-y-2 py-3 md:py-1', ROW[Math.min(all.length, MOST_IN_A_ROW)])
  const thirds = boxes.length % 3 === 0
  const label = (box: Box): string =>
    say(readingsWords, locale, vertical && (box === 'legA' || box === 'legB') ? (`${box}Vertical` as const) : box)
  const set = (index: number, box: Box, text: string): void =>
    onChange({ ...value, stations: stations.map((station, at) => (at === index ? { ...station, [box]: text } : station)) })
  const copyFirst = (): void =>
    onChange({ ...value, stations: stations.map((station) => ({ ...station, ...sizesOf(stations[0], boxes) })) })
  const add = (): void => onChange({ ...value, stations: [...stations, empty(stations[0])] })
  const removeLast = (): void => onChange({ ...value, stations: stations.slice(0, -1) })

  return (
    <div className="grid gap-4">
      <div className="divide-y divide-line border-y border-line md:divide-y-0 md:border-y-0">
        {stations.map((station, index) => {
          const wrong = all.filter((box) => errors[`stations.${index}.${box}`])
          return (
            <div key={index} role="group" aria-labelledby={`${id}-${index}`} className={row}>
              <span className="col-span-3 self-center leading-tight md:col-span-1 md:self-end md:pb-3">
                <span id={`${id}-${index}`} className="font-head text-xl leading-tight font-semibold">{say(readingsWords, locale, 'station', { n: index + 1 })}</span>
                <span aria-hidden="true" className="block text-ink-2 md:hidden">{label('at')}</span>
              </span>
              {all.map((box) => (
                <SizeBox
                  key={box} id={`${id}-${index}-${box}`} label={label(box)} labelSeen={{ phone: box !== 'at', table: index === 0 }} half={box === 'at' || !thirds} value={station[box]}
                  onChange={(event) => set(index, box, event.target.value)} errorId={wrong.includes(box) ? `${id}-${index}-${box}-error` : undefined}
                />
              ))}
              {wrong.length > 0 && (
                <div className="col-span-full grid gap-1 md:col-start-2">
                  {wrong.map((box) => <FieldError key={box} id={`${id}-${index}-${box}-error`}>{label(box)}: {errors[`stations.${index}.${box}`]}</FieldError>)}
                </div>
              )}
              {index === 0 && stations.length > 1 && boxes.some((box) => station[box] !== '') && (
                <div className="col-span-full md:col-start-2"><Button onClick={copyFirst}>{say(readingsWords, locale, 'sameAll')}</Button></div>
              )}
            </div>
          )
        })}
      </div>
      <div className="flex flex-wrap gap-2">
        <Button onClick={add}>{say(readingsWords, locale, 'addStation')}</Button>
        {stations.length > 1 && <Button onClick={removeLast}>{say(readingsWords, locale, 'removeStation', { n: stations.length })}</Button>}
      </div>
    </div>
  )
}

const sizesOf = (row: TypedStation | undefined, boxes: readonly StationBox[]): Partial<TypedStation> =>
  Object.fromEntries(boxes.map((box) => [box, row?.[box] ?? '']))
const empty = (like: TypedStation | undefined): TypedStation =>
  Object.fromEntries(Object.keys(like ?? {}).map((box) => [box, ''])) as TypedStation

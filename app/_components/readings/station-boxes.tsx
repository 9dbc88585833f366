'use client'

import { readingsWords } from '@/lib/language/readings'
import { say } from '@/lib/language/say'
import type { StationBox, TypedStation } from '@/lib/schemas/readings'
import { Button } from '../ui/button'
import { TextInput } from '../ui/text-input'
import type { EditorProps } from './editor-props'

/** The sizes at each station, typed as the gauge says them. */
export function StationBoxes({ locale, boxes, vertical, value, onChange, errors }: EditorProps) {
  const { stations } = value
  const set = (index: number, box: StationBox | 'at', text: string): void =>
    onChange({ ...value, stations: stations.map((row, at) => (at === index ? { ...row, [box]: text } : row)) })
  const copyFirst = (): void =>
    onChange({ ...value, stations: stations.map((row) => ({ ...row, ...sizesOf(stations[0], boxes) })) })
  const add = (): void => onChange({ ...value, stations: [...stations, { ...empty(stations[0]), at: '' }] })
  const remove = (index: number): void => onChange({ ...value, stations: stations.filter((_, at) => at !== index) })
  const label = (box: StationBox): string =>
    say(readingsWords, locale, vertical && (box === 'legA' || box === 'legB') ? (`${box}Vertical` as const) : box)

  return (
    <div className="grid gap-4">
      {stations.map((row, index) => (
        <fieldset key={index} className="border border-line bg-plate p-3">
          <legend className="px-1 font-head text-xl font-semibold">{say(readingsWords, locale, 'station', { n: index + 1 })}</legend>
          <div className="grid grid-cols-2 gap-x-3 gap-y-3 sm:grid-cols-3 lg:grid-cols-5">
            <TextInput figures inputMode="text" autoComplete="off" label={say(readingsWords, locale, 'at')} value={row.at}
              onChange={(event) => set(index, 'at', event.target.value)} error={errors[`stations.${index}.at`]} />
            {boxes.map((box) => (
              <TextInput key={box} figures inputMode="text" autoComplete="off" label={label(box)} value={row[box]}
                onChange={(event) => set(index, box, event.target.value)} error={errors[`stations.${index}.${box}`]} />
            ))}
          </div>
          {index === 0 && stations.length > 1 && boxes.some((box) => row[box] !== '') && (
            <div className="mt-3"><Button onClick={copyFirst}>{say(readingsWords, locale, 'sameAll')}</Button></div>
          )}
          {stations.length > 1 && index === stations.length - 1 && (
            <div className="mt-3"><Button onClick={() => remove(index)}>{say(readingsWords, locale, 'removeStation', { n: index + 1 })}</Button></div>
          )}
        </fieldset>
      ))}
      <div><Button onClick={add}>{say(readingsWords, locale, 'addStation')}</Button></div>
    </div>
  )
}

const sizesOf = (row: TypedStation | undefined, boxes: readonly StationBox[]): Partial<TypedStation> =>
  Object.fromEntries(boxes.map((box) => [box, row?.[box] ?? '']))
const empty = (like: TypedStation | undefined): TypedStation =>
  Object.fromEntries(Object.keys(like ?? {}).map((box) => [box, ''])) as TypedStation

'use client'

import { useState } from 'react'
import { kindNames } from '@/lib/language/kind-names'
import { indicationWords } from '@/lib/language/indications'
import { readingsWords } from '@/lib/language/readings'
import { say } from '@/lib/language/say'
import type { TypedIndication } from '@/lib/schemas/readings'
import { INDICATION_KINDS, type IndicationKind } from '@/lib/scoring/types'
import { later } from '@/app/_components/later'
import { Button } from '../ui/button'
import type { PlacedAt } from './bead-picker'
import type { EditorProps } from './editor-props'
import { IndicationFields, isOnToe } from './indication-fields'

/** The drawn bead comes when it is asked for: a clean coupon never needs it. */
const BeadPicker = later(() => import('./bead-picker').then((module) => module.BeadPicker))

/** What was seen: placed on the drawn bead, named and sized by taps; everything can be typed as well. */
export function IndicationList({ locale, vertical, frame, value, onChange, errors, startPlacing }: EditorProps & { readonly startPlacing: boolean }) {
  const { indications } = value
  const [open, setOpen] = useState<number | null>(null)
  /** The bead is open for a new indication (a place may be tapped already), or for the place of one that stands. */
  const [placing, setPlacing] = useState<{ readonly row: number | 'new'; readonly place: PlacedAt | null } | null>(startPlacing ? { row: 'new', place: null } : null)
  const change = (index: number, part: Partial<TypedIndication>): void =>
    onChange({ ...value, indications: indications.map((row, at) => (at === index ? { ...row, ...part } : row)) })
  const isWrong = (index: number): boolean => Object.keys(errors).some((path) => path.startsWith(`indications.${index}.`))

  function remove(index: number): void {
    onChange({ ...value, indications: indications.filter((_, at) => at !== index) })
    setOpen(null)
    setPlacing(null)
  }

  function add(kind: IndicationKind): void {
    const place = placing?.place ?? null
    onChange({ ...value, indications: [...indications, { kind, toe: isOnToe(kind) ? (place?.toe ?? null) : null, at: place?.at ?? '', length: '', depth: '', diameter: '', height: '' }] })
    setOpen(indications.length)
    setPlacing(null)
  }

  function place(tapped: PlacedAt): void {
    if (placing === null) return
    if (placing.row === 'new') return setPlacing({ row: 'new', place: tapped })
    const row = indications[placing.row]
    change(placing.row, { at: tapped.at, toe: row && isOnToe(row.kind) ? tapped.toe : null })
    setPlacing(null)
  }

  const bead = placing !== null && (
    <div className="grid gap-3">
      <h3 className="font-head text-xl font-semibold">{say(indicationWords, locale, 'whereSeen')}</h3>
      <BeadPicker locale={locale} frame={frame} value={value} onPlace={place} />
    </div>
  )

  return (
    <div className="grid gap-4">
      {indications.length === 0 && placing === null && <p className="text-ink-2">{say(readingsWords, locale, 'noneYet')}</p>}
      {indications.map((row, index) => (open === index || isWrong(index)
        ? (
          <fieldset key={index} className="grid min-w-0 gap-3 border border-line bg-plate p-3">
            <legend className="px-1 font-head text-xl font-semibold">{say(readingsWords, locale, 'indication', { n: index + 1 })}</legend>
            <IndicationFields locale={locale} vertical={vertical} frame={frame} name={`toe-${index}`} row={row} onChange={(part) => change(index, part)}
              error={(box) => errors[`indications.${index}.${box}`]} />
            {placing?.row === index && bead}
            <div className="flex flex-wrap gap-2">
              <Button onClick={() => setPlacing({ row: index, place: null })}>{say(indicationWords, locale, 'movePlace')}</Button>
              <Button onClick={() => { setOpen(null); setPlacing(null) }}>{say(indicationWords, locale, 'closeIndication', { n: index + 1 })}</Button>
              <Button onClick={() => remove(index)}>{say(readingsWords, locale, 'remove', { n: index + 1 })}</Button>
            </div>
          </fieldset>
        ) : (
          <div key={index} className="flex flex-wrap items-center justify-between gap-2 border border-line bg-plate p-3">
            <span className="font-bold">{say(indicationWords, locale, row.at.trim() === '' ? 'noPlace' : 'indicationLine', { kind: kindNames[locale][row.kind], at: withUnit(row.at, frame.units) })}</span>
            <Button onClick={() => setOpen(index)}>{say(indicationWords, locale, 'changeIndication', { n: index + 1 })}</Button>
          </div>
        )))}
      {placing?.row === 'new' ? (
        <div className="grid gap-4 border border-line bg-plate p-3">
          {bead}
          <div role="group" aria-label={say(indicationWords, locale, 'whatSeen')} className="grid gap-2">
            <p role="status" className="font-head text-xl font-semibold">
              {placing.place ? say(indicationWords, locale, 'placed', { place: withUnit(placing.place.at, frame.units) }) : say(indicationWords, locale, 'whatSeen')}
            </p>
            <div className="grid grid-cols-2 gap-2 sm:grid-cols-4">
              {INDICATION_KINDS.map((kind) => <Button key={kind} wide onClick={() => add(kind)}>{kindNames[locale][kind]}</Button>)}
            </div>
          </div>
          <div><Button onClick={() => setPlacing(null)}>{say(indicationWords, locale, 'cancel')}</Button></div>
        </div>
      ) : <div><Button onClick={() => setPlacing({ row: 'new', place: null })}>{say(readingsWords, locale, 'addIndication')}</Button></div>}
    </div>
  )
}

/** A place as typed, with the reader's unit where the typed text names none. */
const withUnit = (text: string, units: 'in' | 'mm'): string => (/\d$/.test(text.trim()) ? `${text.trim()} ${units}` : text)

'use client'

import { useEffect, useRef, useState, type ChangeEvent, type FocusEvent, type KeyboardEvent, type MouseEvent } from 'react'
import { BLANK_ROW, cellOfPath, cellProblem, isEmptyRow, readingsOfRow, repeatSize, type GridRow } from '@/lib/schemas/grid-row'
import { scorecardWords } from '@/lib/language/scorecard'
import { STATION_BOXES } from '@/lib/schemas/readings'
import type { GridGroup } from '@/app/_server/views/grading-grid'
import { SignInAgain, type SignedInBefore } from '@/app/_components/sign-in-again'
import { StatusLine } from '@/app/_components/ui/status-line'
import { useDraft } from '@/app/_components/use-draft'
import { useHydrated } from '@/app/_components/use-hydrated'
import { sendInspection } from '@/app/teach/actions'
import { releaseRow, takeRow } from '@/app/teach/coupons/actions'
import { cellName, cellsOf, couponLabel, lookedForAll, mergeGroups, NAMES, OPEN, textOf, withText, type KeptRows, type RowState, type ShownCoupon, type ShownGroup } from './grid-cells'
import { commandOf } from './grid-command'
import { GridTable } from './grid-table'
import { LeftBehind } from './left-behind'

type Props = {
  readonly groups: readonly GridGroup[]
  readonly snippets: readonly { readonly id: string; readonly body: string }[]
  readonly who: SignedInBefore
  /** Names the person and the exercise. */
  readonly draftKey: string
}

const FAILED = 'It did not get through. What you typed is kept on this device; grade the row again.'
type Place = { readonly coupon: string; readonly cell: string }

/** The place of a focusable cell, from its element. */
function placeOf(target: EventTarget): Place | null {
  const { coupon, cell } = target instanceof HTMLElement ? target.dataset : {}
  return coupon !== undefined && cell !== undefined ? { coupon, cell } : null
}

/** Coupons as rows, stations and rules as columns, filled in and graded by keyboard. What is typed is kept on this device until it is graded. */
export function GradingGrid({ groups, snippets, who, draftKey }: Props) {
  const hydrated = useHydrated()
  const draft = useDraft<KeptRows>(draftKey, {})
  const kept = useRef<KeptRows>(draft.value)
  const [states, setStates] = useState<Readonly<Record<string, RowState>>>({})
  const [read, setRead] = useState(groups)
  const [shown, setShown] = useState<readonly ShownGroup[]>(() => mergeGroups([], groups, () => false))
  const [active, setActive] = useState<Place | null>(null)
  const [said, setSaid] = useState('')
  const [signedOut, setSignedOut] = useState(false)
  const place = useRef<HTMLDivElement>(null)
  const taken = useRef(new Set<string>())

  if (read !== groups) {
    setRead(groups)
    setShown(mergeGroups(shown, groups, (id) => states[id]?.kind === 'graded' || states[id]?.kind === 'sending' || draft.value[id] !== undefined))
  }
  useEffect(() => { kept.current = draft.value }, [draft.value])

  const lines = shown.flatMap((group) => group.coupons.map((coupon) => ({ group, coupon })))
  const lineOf = (id: string) => lines.find(({ coupon }) => coupon.id === id)
  const rowOf = (id: string): GridRow => kept.current[id]?.row ?? BLANK_ROW
  const isOpen = (id: string): boolean => (states[id] ?? OPEN).kind === 'open'
  const setState = (id: string, state: RowState): void => setStates((before) => ({ ...before, [id]: state }))
  const problem = (id: string, cell: string, text: string | null): void => setStates((before) => {
    const state = before[id] ?? OPEN
    if (state.kind !== 'open' || (state.problems[cell] ?? null) === text) return before
    const { [cell]: _gone, ...rest } = state.problems
    return { ...before, [id]: { ...state, problems: text === null ? rest : { ...rest, [cell]: text } } }
  })

  const focus = ({ coupon, cell }: Place): void => {
    const element = place.current?.querySelector<HTMLElement>(`[data-coupon="${coupon}"][data-cell="${cell}"]`)
    element?.focus()
    if (element instanceof HTMLInputElement) element.select()
  }

  function update(coupon: ShownCoupon, row: GridRow): void {
    kept.current = { ...kept.current, [coupon.id]: { label: couponLabel(coupon), row } }
    draft.change(kept.current)
    if (isEmptyRow(row) && row.remark.trim() === '') return release(coupon.id)
    if (taken.current.has(coupon.id)) return
    taken.current.add(coupon.id)
    void takeRow({ couponId: coupon.id }).then((answer) => {
      if (answer.ok && answer.value.other !== null) setSaid(`${answer.value.other} has ${couponLabel(coupon)} open too. Whoever grades it first counts; the other is told.`)
    }, () => taken.current.delete(coupon.id))
  }

  /** Nothing stands in the row any more: others see it free. If that does not get through, it is free when its time is up. */
  function release(id: string): void {
    if (taken.current.delete(id)) void releaseRow({ couponId: id }).catch(() => undefined)
  }

  function forget(id: string): void {
    const { [id]: _graded, ...rest } = kept.current
    kept.current = rest
    draft.change(rest)
  }

  /** The next cell in reading order; false past either end. */
  function step({ coupon, cell }: Place, by: 1 | -1): boolean {
    const order = lines.filter(({ coupon: { id } }) => isOpen(id)).flatMap(({ group, coupon: { id } }) => cellsOf(group).map((each) => ({ coupon: id, cell: each })))
    const next = order[order.findIndex((each) => each.coupon === coupon && each.cell === cell) + by]
    if (next) focus(next)
    return next !== undefined
  }

  /** The same cell of the next row that can still be typed in. */
  function stepRow({ coupon, cell }: Place, by: 1 | -1): void {
    const order = lines.filter(({ coupon: { id } }) => isOpen(id))
    const next = order[order.findIndex((each) => each.coupon.id === coupon) + by]
    if (next) focus({ coupon: next.coupon.id, cell: cellsOf(next.group).includes(cell) ? cell : 'looked' })
  }

  const leave = (): void => document.querySelector<HTMLElement>('#after-grid a')?.focus()

  async function grade(id: string): Promise<void> {
    const line = lineOf(id)
    if (!line || !isOpen(id)) return
    const { coupon, group } = line
    const row = rowOf(id)
    if (isEmptyRow(row)) return setState(id, { kind: 'open', problems: {}, message: 'Nothing is typed in this row yet.' })
    const checked = readingsOfRow(row, group)
    if (checked.kind === 'problems') {
      setState(id, { kind: 'open', problems: checked.cells, message: null })
      focus({ coupon: id, cell: cellsOf(group).find((cell) => checked.cells[cell]) ?? 'grade' })
      return
    }
    setState(id, { kind: 'sending' })
    const after = lines.slice(lines.indexOf(line) + 1).find((each) => isOpen(each.coupon.id)) ?? lines.find((each) => each.coupon.id !== id && isOpen(each.coupon.id))
    if (after) focus({ coupon: after.coupon.id, cell: cellsOf(after.group)[0] ?? 'looked' })
    try {
      const answer = await sendInspection({ couponId: id, revision: coupon.revision, comment: row.remark, readings: checked.readings })
      if (answer.ok) {
        const { verdict, mark } = answer.value
        forget(id)
        setState(id, { kind: 'graded', verdict, mark })
        setSaid(`${couponLabel(coupon)}: ${scorecardWords.en[verdict]}${mark === null ? '' : `, mark ${mark}`}.`)
        if (!after) leave()
        return
      }
      if (answer.code === 'SIGNED_OUT') setSignedOut(true)
      const problems: Record<string, string> = {}
      for (const [path, text] of Object.entries(answer.fields)) problems[cellOfPath(path) ?? 'grade'] ??= text
      setState(id, { kind: 'open', problems, message: answer.code === 'INVALID' ? null : answer.message })
      setSaid(`${couponLabel(coupon)} is not graded. ${answer.message}`)
    } catch {
      setState(id, { kind: 'open', problems: {}, message: FAILED })
      setSaid(`${couponLabel(coupon)} is not graded. ${FAILED}`)
    }
  }

  function lookForAll(id: string): void {
    const line = lineOf(id)
    if (!line) return
    update(line.coupon, lookedForAll(rowOf(id)))
    focus({ coupon: id, cell: 'grade' })
  }

  function repeat(at: Place): void {
    const line = lineOf(at.coupon)
    const [station, name] = at.cell.split('.')
    const box = STATION_BOXES.find((each) => each === name)
    if (!line || box === undefined) return
    const { coupon, group } = line
    const row = repeatSize(rowOf(coupon.id), group, Number(station), box)
    if (row === null) return setSaid('There is nothing to repeat here: “=” repeats the station before, and at the first station the leg before.')
    update(coupon, row)
    const cells = cellsOf(group)
    const last = Number(station) === 0 ? at.cell : `${station}.${group.boxes.at(-1)}`
    cells.slice(cells.indexOf(at.cell), cells.indexOf(last) + 1).forEach((cell) => problem(coupon.id, cell, null))
    focus({ coupon: coupon.id, cell: cells[cells.indexOf(last) + 1] ?? 'looked' })
  }

  function pick(at: Place, index: number): void {
    const body = snippets[index]?.body
    const line = lineOf(at.coupon)
    if (body !== undefined && line) update(line.coupon, { ...rowOf(at.coupon), remark: body })
  }

  function onKeyDown(event: KeyboardEvent): void {
    const at = placeOf(event.target)
    if (!at || !isOpen(at.coupon)) return
    const command = commandOf(event, at.cell, { snippets: snippets.length, text: textOf(rowOf(at.coupon), at.cell) })
    switch (command?.do) {
      case undefined: return
      case 'step': if (!step(at, command.by) && command.key === 'Tab') return; break
      case 'row': stepRow(at, command.by); break
      case 'grade': void grade(at.coupon); break
      case 'looked': lookForAll(at.coupon); break
      case 'repeat': repeat(at); break
      case 'snippet': pick(at, command.index); break
      case 'leave': leave(); break
    }
    event.preventDefault()
  }

  function onChange(event: ChangeEvent<HTMLElement>): void {
    const at = placeOf(event.target)
    const line = at && lineOf(at.coupon)
    if (!line || !(event.target instanceof HTMLInputElement)) return
    update(line.coupon, withText(rowOf(at.coupon), at.cell, event.target.value))
    problem(at.coupon, at.cell, null)
  }

  function onClick(event: MouseEvent): void {
    const discarded = event.target instanceof HTMLElement ? event.target.closest<HTMLElement>('[data-discard]')?.dataset['discard'] : undefined
    const at = placeOf(event.target)
    if (discarded !== undefined) {
      forget(discarded)
      setShown(shown.map((group) => ({ ...group, coupons: group.coupons.filter(({ id }) => id !== discarded) })).filter(({ coupons }) => coupons.length > 0))
    } else if (at?.cell === 'grade') void grade(at.coupon)
    else if (at?.cell === 'looked') {
      const line = lineOf(at.coupon)
      if (line) update(line.coupon, { ...rowOf(at.coupon), looked: !rowOf(at.coupon).looked })
    }
  }

  function onBlur(event: FocusEvent): void {
    const at = placeOf(event.target)
    const line = at && lineOf(at.coupon)
    if (line && event.target instanceof HTMLInputElement) problem(at.coupon, at.cell, cellProblem(at.cell, event.target.value, line.group.units))
  }

  const nameOf = (cell: string): string => {
    const group = shown[0] ?? groups[0]
    return group ? cellName(cell, group, group.heads) : (NAMES[cell] ?? cell)
  }
  const first = lines.find(({ coupon }) => isOpen(coupon.id))
  const entry = active && isOpen(active.coupon) && lineOf(active.coupon) ? active : first ? { coupon: first.coupon.id, cell: cellsOf(first.group)[0] ?? 'looked' } : null
  return (
    <div ref={place} inert={!hydrated} className="grid gap-6" onKeyDown={onKeyDown} onChange={onChange} onClick={onClick} onBlur={onBlur} onFocus={(event) => { const at = placeOf(event.target); if (at) setActive(at) }}>
      {signedOut && <SignInAgain locale="en" who={who} onSignedIn={() => { setSignedOut(false); setSaid('Signed in again. Grade the rows that were not sent.') }} />}
      {shown.map((group) => (
        <GridTable key={group.version} group={group} rows={draft.value} states={states} entry={entry} caption={shown.length > 1 ? `Coupons of version ${group.version} of the exercise` : 'Coupons that wait'} />
      ))}
      <StatusLine>{said}</StatusLine>
      <LeftBehind rows={Object.entries(draft.value).filter(([id]) => !lineOf(id))} nameOf={nameOf} />
    </div>
  )
}

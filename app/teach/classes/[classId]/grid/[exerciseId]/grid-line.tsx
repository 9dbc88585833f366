'use client'

import Link from 'next/link'
import { memo } from 'react'
import { scorecardWords } from '@/lib/language/scorecard'
import { sizeCell, type GridFrame, type GridRow } from '@/lib/schemas/grid-row'
import { buttonLook } from '@/app/_components/ui/button-look'
import { classes } from '@/app/_components/ui/classes'
import { FieldError } from '@/app/_components/ui/field'
import { VerdictWord } from '@/app/_components/ui/verdict-word'
import { cellName, cellsOf, couponLabel, textOf, type RowState, type ShownCoupon } from './grid-cells'

type Props = {
  readonly coupon: ShownCoupon
  readonly frame: GridFrame
  readonly heads: readonly string[]
  readonly row: GridRow
  readonly state: RowState
  /** The cell that is in the page's tab order; null when it is in another row. */
  readonly active: string | null
}

/** The table hears of what is typed: one pair of ears for several hundred boxes. */
const heardByTheTable = (): void => {}

const WIDTH: Readonly<Record<string, string>> = { craters: 'w-14', fusion: 'w-14', seen: 'w-72', remark: 'w-72' }
const boxLook = (cell: string): string => classes(
  'min-h-12 rounded-plate border-[1.5px] border-ink bg-plate px-1.5 py-1 text-ink aria-invalid:border-[3px] aria-invalid:border-reject',
  WIDTH[cell] ?? 'w-16', cell === 'seen' || cell === 'remark' ? 'text-lg' : 'figures text-xl',
)

/** One coupon of the grid, with the sentences about its cells below it. */
export const GridLine = memo(function GridLine({ coupon, frame, heads, row, state, active }: Props) {
  const cells = cellsOf(frame)
  const label = couponLabel(coupon)
  const head = (
    <th scope="row" className="sticky left-0 z-10 w-40 min-w-40 bg-paper py-1 pr-3 text-left align-top leading-tight font-bold max-sm:w-28 max-sm:min-w-28">
      {label}
      <span className="block font-normal text-ink-2">{coupon.booth === null ? 'no booth' : `booth ${coupon.booth}`}</span>
      {coupon.takenBy && state.kind !== 'graded' && <span className="block font-normal">{coupon.takenBy} has it open.</span>}
    </th>
  )
  if (state.kind === 'graded') {
    return (
      <tr className="border-b border-line">
        {head}
        <td colSpan={cells.length} className="py-1">
          <span className="flex min-h-12 flex-wrap items-center gap-x-6">
            <VerdictWord verdict={state.verdict} word={scorecardWords.en[state.verdict]} />
            <span>{state.mark === null ? 'no mark' : `mark ${state.mark}`}</span>
            <Link href={`/teach/coupons/${coupon.id}`} className="inline-flex min-h-12 items-center">Open it<span className="sr-only">: {label}</span></Link>
          </span>
        </td>
      </tr>
    )
  }
  const problems = state.kind === 'open' ? state.problems : {}
  const wrong = cells.filter((cell) => problems[cell])
  const message = state.kind === 'open' ? state.message : null
  const errorId = (cell: string): string => `e-${coupon.id}-${cell.replace('.', '-')}`
  const wiring = (cell: string) => ({ 'data-coupon': coupon.id, 'data-cell': cell, tabIndex: active === cell ? 0 : -1 })
  const box = (cell: string) => (
    <input
      {...wiring(cell)} type="text" aria-label={cellName(cell, frame, heads)} value={textOf(row, cell)} onChange={heardByTheTable} readOnly={state.kind === 'sending'}
      autoComplete="off" autoCapitalize={cell === 'remark' ? 'sentences' : 'off'} spellCheck={cell === 'remark'} aria-invalid={problems[cell] ? true : undefined}
      aria-describedby={problems[cell] ? errorId(cell) : undefined} className={boxLook(cell)}
    />
  )
  return (
    <>
      <tr className={classes(wrong.length === 0 && message === null && !coupon.gone && 'border-b border-line')}>
        {head}
        {frame.places.map((_, station) => frame.boxes.map((name, index) => (
          <td key={sizeCell(station, name)} className={classes('p-1 align-top', index === 0 && 'border-l border-line pl-2')}>{box(sizeCell(station, name))}</td>
        )))}
        <td className="border-l border-line p-1 pl-2 align-top">
          <button type="button" {...wiring('looked')} aria-pressed={row.looked} aria-label={cellName('looked', frame, heads)} className={classes(buttonLook('secondary', 'shop', false), 'w-20')}>
            {row.looked ? 'all' : '–'}
          </button>
        </td>
        {(['craters', 'fusion', 'seen', 'remark'] as const).map((cell) => <td key={cell} className="p-1 align-top">{box(cell)}</td>)}
        <td className="p-1 align-top">
          <button type="button" {...wiring('grade')} aria-disabled={state.kind === 'sending'} aria-label={`Grade ${label}`} className={buttonLook('primary', 'shop', false)}>{state.kind === 'sending' ? 'Sending' : 'Grade'}</button>
        </td>
      </tr>
      {(wrong.length > 0 || message !== null || coupon.gone) && (
        <tr className="border-b border-line">
          <td colSpan={cells.length + 1} className="pb-2">
            <div className="sticky left-0 grid w-fit max-w-[min(90vw,60rem)] gap-1">
              {wrong.map((cell) => <FieldError key={cell} id={errorId(cell)}>{cellName(cell, frame, heads)}: {problems[cell]}</FieldError>)}
              {message !== null && <FieldError id={errorId('row')}>{message}</FieldError>}
              {coupon.gone && (
                <p className="flex flex-wrap items-center gap-x-4">
                  <span>Someone else inspected this coupon meanwhile. What you typed is still here.</span>
                  <a href={`/teach/coupons/${coupon.id}`} className="inline-flex min-h-12 items-center">See the inspection that stands<span className="sr-only">: {label}</span></a>
                  <button type="button" data-discard={coupon.id} className={buttonLook('quiet', 'shop', false)}>Discard this row<span className="sr-only">: {label}</span></button>
                </p>
              )}
            </div>
          </td>
        </tr>
      )}
    </>
  )
})

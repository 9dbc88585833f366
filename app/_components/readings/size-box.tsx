import type { ComponentProps } from 'react'
import { classes } from '../ui/classes'

type SizeBoxProps = Pick<ComponentProps<'input'>, 'id' | 'value' | 'onChange' | 'onFocus' | 'onKeyDown' | 'inputMode'> & {
  /** 'Width, station 3', for those who do not see the row and the number over the box. */
  readonly label: string
  readonly number: number
  /** The pad fills this box next. */
  readonly active: boolean
  /** The id of the sentence that says what is wrong with it, where something is. */
  readonly errorId: string | undefined
}

/** One size of one station in the row of its size: the station's number above it, its error sentence below the row. */
export function SizeBox({ id, label, number, active, errorId, ...input }: SizeBoxProps) {
  return (
    <div className="grid min-w-0 gap-0.5">
      <label htmlFor={id} className="text-center leading-tight">
        <span className="sr-only">{label}</span>
        <span aria-hidden="true" className={classes(active ? 'font-bold' : 'text-ink-2')}>{number}</span>
      </label>
      <input
        id={id} type="text" autoComplete="off" enterKeyHint="next" data-active={active || undefined} aria-invalid={errorId ? true : undefined} aria-describedby={errorId} {...input}
        className={classes(
          'figures min-h-13 w-full scroll-mt-24 scroll-mb-96 rounded-plate bg-plate px-0.5 text-center text-xl text-ink aria-invalid:border-reject',
          active ? 'border-4 border-ink' : 'border-[1.5px] border-ink aria-invalid:border-[3px]',
        )}
      />
    </div>
  )
}

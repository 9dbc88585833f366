import type { ChangeEventHandler } from 'react'
import { classes } from '../ui/classes'
import { controlLook } from '../ui/control-look'

type SizeBoxProps = {
  readonly id: string
  readonly label: string
  /** Where the label is seen: a phone's rows and the table from 768 px up show it differently. */
  readonly labelSeen: { readonly phone: boolean; readonly table: boolean }
  /** Takes half of a phone's width, not a third. */
  readonly half: boolean
  readonly value: string
  readonly onChange: ChangeEventHandler<HTMLInputElement>
  /** The id of the sentence that says what is wrong with it, where something is. */
  readonly errorId: string | undefined
}

/** One size of one station: its label above it, its error sentence below the station's row. */
export function SizeBox({ id, label, labelSeen, half, value, onChange, errorId }: SizeBoxProps) {
  return (
    <div className={classes('grid min-w-0 content-end gap-1 md:col-span-1', half ? 'col-span-3' : 'col-span-2')}>
      <label htmlFor={id} className={classes('leading-tight font-bold', !labelSeen.phone && 'max-md:sr-only', !labelSeen.table && 'md:sr-only')}>{label}</label>
      <input
        id={id} type="text" autoComplete="off" value={value} onChange={onChange} aria-invalid={errorId ? true : undefined} aria-describedby={errorId}
        className={controlLook(true)}
      />
    </div>
  )
}

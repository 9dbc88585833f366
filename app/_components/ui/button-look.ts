import { classes } from './classes'

/** primary: the one thing to do next. secondary: the others. quiet: beside text. danger: takes something away. */
export type ButtonKind = 'primary' | 'secondary' | 'quiet' | 'danger'
/** shop: 48 px, for gloves and thumbs. desk: 36 px, for a mouse beside a table. */
export type ButtonSize = 'shop' | 'desk'

const KIND: Readonly<Record<ButtonKind, string>> = {
  primary: 'border-ink bg-ink text-paper hover:underline',
  secondary: 'border-ink bg-plate text-ink hover:bg-plate-2',
  quiet: 'border-transparent bg-transparent text-ink underline hover:bg-plate-2',
  danger: 'border-reject bg-plate text-ink hover:bg-plate-2',
}
const SIZE: Readonly<Record<ButtonSize, string>> = {
  shop: 'min-h-12 px-5 py-2 text-xl',
  desk: 'min-h-9 px-3 py-1 text-lg',
}

export function buttonLook(kind: ButtonKind, size: ButtonSize, wide: boolean): string {
  return classes(
    'inline-flex items-center justify-center gap-2 rounded-plate border-[1.5px] text-center font-head leading-tight font-semibold',
    'no-underline decoration-2 underline-offset-4 print:hidden',
    'disabled:border-line disabled:bg-plate-2 disabled:text-ink-2 disabled:no-underline',
    'aria-disabled:border-line aria-disabled:bg-plate-2 aria-disabled:text-ink-2',
    KIND[kind],
    SIZE[size],
    wide && 'w-full',
  )
}

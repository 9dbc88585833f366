import { classes } from './classes'

/** The look every typed-in or chosen-from control shares: 48 px, ink border, thicker and in the reject colour when wrong. */
export function controlLook(figures: boolean): string {
  return classes(
    'min-h-12 w-full rounded-plate border-[1.5px] border-ink bg-plate px-3 py-2 text-ink',
    'aria-invalid:border-[3px] aria-invalid:border-reject disabled:border-line disabled:bg-plate-2 disabled:text-ink-2',
    figures ? 'figures text-2xl' : 'text-lg',
  )
}

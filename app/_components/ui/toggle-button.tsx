import type { ComponentProps } from 'react'
import { buttonLook } from './button-look'
import { VerdictMark } from './verdict-mark'

type ToggleButtonProps = Omit<ComponentProps<'button'>, 'className' | 'style' | 'aria-pressed' | 'type'> & {
  readonly pressed: boolean
  readonly wide?: boolean
}

/** A button that stays down: 'looked for it, none found'. Down is a filled disc and the pressed state, up a dashed ring. */
export function ToggleButton({ pressed, wide = false, children, ...rest }: ToggleButtonProps) {
  return (
    <button type="button" aria-pressed={pressed} className={buttonLook('secondary', 'shop', wide)} {...rest}>
      <VerdictMark verdict={pressed ? 'accept' : 'incomplete'} size="small" />
      <span>{children}</span>
    </button>
  )
}

import type { ComponentProps } from 'react'
import { buttonLook, type ButtonKind, type ButtonSize } from './button-look'

type ButtonProps = Omit<ComponentProps<'button'>, 'className' | 'style'> & {
  readonly kind?: ButtonKind
  readonly size?: ButtonSize
  /** Takes the whole width of its place. */
  readonly wide?: boolean
}

/** A button. It does not submit a form unless asked to with type="submit". */
export function Button({ kind = 'secondary', size = 'shop', wide = false, type = 'button', ...rest }: ButtonProps) {
  return <button type={type} className={buttonLook(kind, size, wide)} {...rest} />
}

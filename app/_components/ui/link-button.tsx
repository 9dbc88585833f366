import Link from 'next/link'
import type { ComponentProps } from 'react'
import { buttonLook, type ButtonKind, type ButtonSize } from './button-look'

type LinkButtonProps = Omit<ComponentProps<typeof Link>, 'className' | 'style'> & {
  readonly kind?: ButtonKind
  readonly size?: ButtonSize
  readonly wide?: boolean
}

/** A link that looks like a button: it goes somewhere, it does not change anything. */
export function LinkButton({ kind = 'secondary', size = 'shop', wide = false, ...rest }: LinkButtonProps) {
  return <Link className={buttonLook(kind, size, wide)} {...rest} />
}

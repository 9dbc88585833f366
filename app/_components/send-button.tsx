'use client'

import type { ComponentProps } from 'react'
import { Button } from './ui/button'
import { useHydrated } from './use-hydrated'

type SendButtonProps = Omit<ComponentProps<typeof Button>, 'type' | 'disabled'> & { readonly busy: boolean }

/** Sends a form that needs its scripts. It opens once they are there; while it is busy it stays where the focus is and does nothing. */
export function SendButton({ busy, ...rest }: SendButtonProps) {
  return <Button type="submit" disabled={!useHydrated()} aria-disabled={busy || undefined} {...rest} />
}

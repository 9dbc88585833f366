'use client'

import { useSyncExternalStore } from 'react'

const never = (): (() => void) => () => {}

/**
 * False in the page as the server sent it, true once its scripts have taken over. A form waits for that: sent earlier, the browser would
 * post it as plain fields to an address that does not take them, and what was typed would be gone.
 */
export function useHydrated(): boolean {
  return useSyncExternalStore(never, () => true, () => false)
}

'use client'

import { useEffect, useRef, useState } from 'react'

/** Drafts of another shape than today's are not opened: the form would not know what to do with them. */
const VERSION = 1
type Kept<T> = { readonly version: number; readonly value: T }

/** What is kept under a key on this device, or null. */
export function readDraft<T>(key: string): T | null {
  try {
    const kept = JSON.parse(window.localStorage.getItem(key) ?? 'null') as Kept<T> | null
    return kept?.version === VERSION ? kept.value : null
  } catch {
    return null // storage is off, full or holds something else: there is no draft
  }
}

/** Keeps a value under a key for the next time its form opens; null forgets it. Where storage is full or off, nothing happens. */
export function writeDraft(key: string, value: unknown): void {
  try {
    if (value === null) window.localStorage.removeItem(key)
    else window.localStorage.setItem(key, JSON.stringify({ version: VERSION, value }))
  } catch {
    // The form still works; it only cannot be kept.
  }
}

/**
 * Keeps what is typed on this device until it is sent. `key` names the person and the thing, so that on a shared tablet nobody meets
 * another's draft. `restored` says that what stands in the form came from an earlier visit.
 */
export function useDraft<T>(key: string, initial: T) {
  const [value, setValue] = useState<T>(initial)
  const [restored, setRestored] = useState(false)
  const loaded = useRef(false)

  useEffect(() => {
    const kept = readDraft<T>(key)
    if (kept !== null) {
      // The server rendered the empty form; the draft exists only in this browser and can be shown only after that.
      setValue(kept)
      setRestored(true)
    }
    loaded.current = true
  }, [key])

  function change(next: T): void {
    setValue(next)
    writeDraft(key, next)
  }

  function clear(): void {
    writeDraft(key, null)
    setRestored(false)
  }

  return { value, change, restored, startOver: () => { clear(); setValue(initial) }, clear }
}

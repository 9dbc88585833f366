'use client'

import { useCallback, useState } from 'react'

export type Size = { readonly width: number; readonly height: number }

/** The size of an element on the screen, kept up to date; null before it is there. Give `ref` to the element. */
export function useSize(): { readonly ref: (element: Element | null) => (() => void) | undefined; readonly size: Size | null } {
  const [size, setSize] = useState<Size | null>(null)
  const ref = useCallback((element: Element | null) => {
    if (!element) return undefined
    const observer = new ResizeObserver(([entry]) => {
      const box = entry?.contentRect
      if (box && box.width > 0 && box.height > 0) setSize({ width: box.width, height: box.height })
    })
    observer.observe(element)
    return () => observer.disconnect()
  }, [])
  return { ref, size }
}

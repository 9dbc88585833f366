'use client'

import { usePathname } from 'next/navigation'
import { useEffect } from 'react'
import { installWorker, tellWorker } from './worker'

/** Kept for later, so not while the page in front still loads. */
const LATER_MS = 1500

/** The page that is open; of an exercise both its booth card and its log form, whichever of them it is. */
function around(here: string): string[] {
  const [exercise] = /^\/learn\/[^/]+\/[^/]+(?=$|\/log$)/.exec(here) ?? []
  return exercise ? [here, exercise, `${exercise}/log`] : [here]
}

/** Keeps these pages, and the one that is open, on the device for when there is no connection. They are the signed-in person's alone. */
export function KeepPages({ personId, paths }: { readonly personId: string; readonly paths: readonly string[] }) {
  const here = usePathname()
  const wanted = [...around(here), ...paths].join(' ')
  useEffect(() => {
    void installWorker()
    const timer = window.setTimeout(() => tellWorker({ type: 'keep', person: personId, paths: wanted.split(' ') }), LATER_MS)
    return () => window.clearTimeout(timer)
  }, [personId, wanted])
  return null
}

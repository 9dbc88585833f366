'use client'

import { useEffect, useId, useRef } from 'react'
import { photoGauge } from '@/lib/language/photo-gauge'
import { say, type Locale } from '@/lib/language/say'
import { Button } from '../ui/button'

type Props = { readonly locale: Locale; readonly n: number; /** Whether the photo keeps earlier marks all the same. */ readonly earlier: boolean; readonly onKeep: () => void; readonly onDrop: () => void }

/** Asked before marks are thrown away; Escape keeps them. */
export function AskClose({ locale, n, earlier, onKeep, onDrop }: Props) {
  const dialog = useRef<HTMLDialogElement>(null)
  const id = useId()
  useEffect(() => { if (!dialog.current?.open) dialog.current?.showModal() }, [])
  return (
    <dialog ref={dialog} aria-labelledby={`${id}-title`} aria-describedby={`${id}-what`} className="m-auto max-w-md border-[1.5px] border-ink bg-paper p-4 text-ink backdrop:bg-ink/60"
      onClose={(event) => { event.stopPropagation(); onKeep() }}>
      <div className="grid gap-4">
        <h3 id={`${id}-title`} className="font-head text-2xl leading-tight font-semibold">{say(photoGauge, locale, 'askTitle')}</h3>
        <p id={`${id}-what`}>{say(photoGauge, locale, earlier ? 'askWhatEarlier' : 'askWhat', { n })}</p>
        <div className="flex flex-wrap gap-2">
          <Button kind="primary" onClick={onKeep}>{say(photoGauge, locale, 'askKeep')}</Button>
          <Button kind="danger" onClick={onDrop}>{say(photoGauge, locale, 'askDrop')}</Button>
        </div>
      </div>
    </dialog>
  )
}

'use client'

import { useRef, useState } from 'react'
import { photoGauge } from '@/lib/language/photo-gauge'
import { say, type Locale } from '@/lib/language/say'
import type { PhotoMarks } from '@/lib/measure/photo-marks'
import type { StationWidth } from '@/lib/measure/widths-at-stations'
import type { PhotoTask } from '@/lib/measure/widths-into-form'
import { later } from '@/app/_components/later'
import { Button } from '../ui/button'
import type { Purpose } from './widths-screen'

const GaugeDialog = later(() => import('./gauge-dialog').then((module) => module.GaugeDialog))

const INTO_FORM: Purpose = { kind: 'form' }

type Props = {
  readonly locale: Locale
  /** Which photo of the coupon, from 1. */
  readonly n: number
  readonly task: PhotoTask
  readonly photo: Blob | (() => Promise<Blob>)
  /** Marks of this person that the photo has already: measuring goes on from them. */
  readonly earlier: PhotoMarks | null
  /** Whether those are only on this device, to be sent with the photo. */
  readonly unsent?: boolean
  /** Where the widths go; without it into the form. */
  readonly purpose?: Purpose
  /** Widths the person accepted, and the marks they come from. */
  readonly onAccept: (marks: PhotoMarks, widths: readonly StationWidth[]) => void
}

/** Opens the measuring on a photo. */
export function MeasureButton({ locale, n, task, photo, earlier, unsent = false, purpose = INTO_FORM, onAccept }: Props) {
  const [open, setOpen] = useState<Blob | null>(null)
  const [failed, setFailed] = useState(false)
  const place = useRef<HTMLDivElement>(null)

  async function start(): Promise<void> {
    try {
      setFailed(false)
      setOpen(typeof photo === 'function' ? await photo() : photo)
    } catch {
      setFailed(true)
    }
  }
  function close(): void {
    setOpen(null)
    place.current?.querySelector('button')?.focus()
  }
  return (
    <div ref={place} className="grid gap-2">
      <div><Button onClick={() => void start()}>{say(photoGauge, locale, earlier ? 'again' : 'show', { n })}</Button></div>
      {failed && <p role="alert">{say(photoGauge, locale, 'notOpened')}</p>}
      {earlier && <p role="status" className="text-ink-2">{say(photoGauge, locale, unsent ? 'marksUnsent' : 'marksKept')}</p>}
      {open && <GaugeDialog locale={locale} task={task} photo={open} purpose={purpose} earlier={earlier} onClose={close} onAccept={(marks, widths) => { onAccept(marks, widths); close() }} />}
    </div>
  )
}

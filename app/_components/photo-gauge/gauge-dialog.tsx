'use client'

import { useEffect, useId, useRef, useState } from 'react'
import { createPortal } from 'react-dom'
import { photoGauge } from '@/lib/language/photo-gauge'
import { say, type Locale } from '@/lib/language/say'
import type { KnownScale } from '@/lib/measure/marking'
import type { PhotoMarks } from '@/lib/measure/photo-marks'
import { PhotoProblem } from '@/lib/measure/photo-problem'
import type { StationWidth } from '@/lib/measure/widths-at-stations'
import type { PhotoTask } from '@/lib/measure/widths-into-form'
import { Button } from '../ui/button'
import { Notice } from '../ui/notice'
import { MarksScreen } from './marks-screen'
import { opened, type OpenPhoto } from './open-photo'
import { ScaleChoice } from './scale-choice'
import { useMarking } from './use-marking'
import { useSize } from './use-size'
import { WidthsScreen } from './widths-screen'

type Accepted = (marks: PhotoMarks, widths: readonly StationWidth[]) => void
type Props = {
  readonly locale: Locale
  readonly task: PhotoTask
  /** The photo, upright and no larger than it is kept. */
  readonly photo: Blob
  readonly onAccept: Accepted
  readonly onClose: () => void
}

/** Measuring on a photo, over the whole screen: the scale, the marks, the widths. Nothing is taken over before the person accepts it. */
export function GaugeDialog({ locale, task, photo, onAccept, onClose }: Props) {
  const dialog = useRef<HTMLDialogElement>(null)
  const titleId = useId()
  const [open, setOpen] = useState<OpenPhoto | 'failed' | null>(null)
  const [scale, setScale] = useState<KnownScale | null>(null)
  const told = (key: keyof typeof photoGauge.en): string => say(photoGauge, locale, key)

  useEffect(() => { if (!dialog.current?.open) dialog.current?.showModal() }, [])
  useEffect(() => {
    let url: string | null = null
    let gone = false
    const ready = (picture: OpenPhoto): void => {
      url = picture.url
      if (gone) URL.revokeObjectURL(url)
      else setOpen(picture)
    }
    void opened(photo).then(ready, () => { if (!gone) setOpen('failed') })
    return () => {
      gone = true
      if (url) URL.revokeObjectURL(url)
    }
  }, [photo])

  const body = open === null ? <p role="status" className="p-4">{told('loading')}</p>
    : open === 'failed' ? <div className="p-4"><Notice kind="problem" word={told('problemWord')} live>{told('notOpened')}</Notice></div>
    : scale === null ? <ScaleChoice locale={locale} units={task.units} onChoose={setScale} />
    : <Marks locale={locale} task={task} photo={open} scale={scale} onAccept={onAccept} />
  return createPortal(
    <dialog ref={dialog} aria-labelledby={titleId} onClose={onClose} className="m-0 h-dvh max-h-none w-screen max-w-none bg-paper text-ink backdrop:bg-ink">
      <div className="flex h-full min-h-0 flex-col">
        <div className="flex items-center justify-between gap-2 border-b-[1.5px] border-ink p-2">
          <h2 id={titleId} className="font-head text-2xl leading-tight font-semibold">{told('title')}</h2>
          <div className="flex gap-2">
            {scale && <Button onClick={() => setScale(null)}>{told('back')}</Button>}
            <Button onClick={() => dialog.current?.close()} aria-label={told('close')}><span aria-hidden="true">×</span></Button>
          </div>
        </div>
        {body}
      </div>
    </dialog>,
    document.body,
  )
}

type MarksProps = { readonly locale: Locale; readonly task: PhotoTask; readonly photo: OpenPhoto; readonly scale: KnownScale; readonly onAccept: Accepted }

function Marks({ locale, task, photo, scale, onAccept }: MarksProps) {
  const { ref, size } = useSize()
  const [showsWidths, setShowsWidths] = useState(false)
  const state = useMarking(photo, scale, task.places.map(({ atMm }) => atMm / task.weldLengthMm), size)
  const { result } = state
  if (showsWidths && result && !(result instanceof PhotoProblem)) {
    return <WidthsScreen locale={locale} task={task} measurement={result} onBack={() => setShowsWidths(false)} onAccept={(widths) => onAccept(result.marks, widths)} />
  }
  return <MarksScreen locale={locale} photo={photo} sizeRef={ref} size={size} state={state} onDone={() => setShowsWidths(true)} />
}

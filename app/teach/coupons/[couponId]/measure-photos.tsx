'use client'

import { useState } from 'react'
import { photoTask, withWidths } from '@/lib/measure/widths-into-form'
import type { PhotoMarks } from '@/lib/measure/photo-marks'
import type { SizeFrame } from '@/lib/reports/size-frame'
import type { ReadingsForm } from '@/lib/schemas/readings'
import { postMarks } from '@/app/_components/outbox/post-entry'
import { MeasureButtonLater } from '@/app/_components/photo-gauge/measure-button-later'
import { photoOf } from '@/app/_components/photo-gauge/photo-of'
import { Button } from '@/app/_components/ui/button'
import { Notice } from '@/app/_components/ui/notice'

type Props = {
  readonly photoIds: readonly string[]
  /** What this instructor marked on them, by photo. */
  readonly ownMarks: Readonly<Record<string, PhotoMarks>>
  readonly frame: SizeFrame
  readonly readings: ReadingsForm
  readonly onReadings: (readings: ReadingsForm) => void
}

/** Measuring on the coupon's photos during the look: widths go into this form, the marks to the server under the instructor's own name. */
export function MeasurePhotos({ photoIds, ownMarks, frame, readings, onReadings }: Props) {
  const [kept, setKept] = useState(ownMarks)
  const [trouble, setTrouble] = useState<{ readonly id: string; readonly marks: PhotoMarks; readonly why: string } | null>(null)
  const task = photoTask(readings, frame)
  async function send(id: string, marks: PhotoMarks): Promise<void> {
    setTrouble(null)
    const sent = await postMarks(id, marks)
    if (sent.kind === 'taken') setKept((before) => ({ ...before, [id]: marks }))
    else setTrouble({ id, marks, why: sent.kind === 'refused' ? sent.message : 'The server gave no answer.' })
  }
  if (photoIds.length === 0 || task.places.length === 0) return null
  return (
    <div className="grid gap-3">
      {photoIds.map((id, index) => (
        <MeasureButtonLater key={id} locale="en" n={index + 1} task={task} photo={() => photoOf(id)} earlier={kept[id] ?? null} onAccept={(marks, widths) => {
          onReadings(withWidths(readings, task, widths))
          void send(id, marks)
        }} />
      ))}
      {trouble && (
        <Notice kind="problem" word="Marks not kept" live>
          <p>The widths are in the form, but the marks on photo {photoIds.indexOf(trouble.id) + 1} could not be kept with it. {trouble.why}</p>
          <div className="mt-2"><Button onClick={() => void send(trouble.id, trouble.marks)}>Send the marks again</Button></div>
        </Notice>
      )}
    </div>
  )
}

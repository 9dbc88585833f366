'use client'

import { useState } from 'react'
import { photoTask, withWidths } from '@/lib/measure/widths-into-form'
import type { SizeFrame } from '@/lib/reports/size-frame'
import type { ReadingsForm } from '@/lib/schemas/readings'
import { later } from '@/app/_components/later'
import { postMarks } from '@/app/_components/outbox/post-entry'
import { Notice } from '@/app/_components/ui/notice'

const MeasureButton = later(() => import('@/app/_components/photo-gauge/measure-button').then((module) => module.MeasureButton))

type Props = {
  readonly photoIds: readonly string[]
  /** Photos this instructor has measured on. */
  readonly measuredIds: readonly string[]
  readonly frame: SizeFrame
  readonly readings: ReadingsForm
  readonly onReadings: (readings: ReadingsForm) => void
}

/** Measuring on the coupon's photos during the look: widths go into this form, the marks to the server under the instructor's own name. */
export function MeasurePhotos({ photoIds, measuredIds, frame, readings, onReadings }: Props) {
  const [kept, setKept] = useState<readonly string[]>(measuredIds)
  const [trouble, setTrouble] = useState<string | null>(null)
  const task = photoTask(readings, frame)
  if (photoIds.length === 0 || task.places.length === 0) return null
  return (
    <div className="grid gap-3">
      {photoIds.map((id, index) => (
        <MeasureButton key={id} locale="en" n={index + 1} task={task} photo={() => photoOf(id)} isMeasured={kept.includes(id)} onAccept={(marks, widths) => {
          onReadings(withWidths(readings, task, widths))
          setTrouble(null)
          void postMarks(id, marks).then((sent) => {
            if (sent.kind === 'taken') setKept((before) => [...before, id])
            else setTrouble(sent.kind === 'refused' ? sent.message : '')
          })
        }} />
      ))}
      {trouble !== null && <Notice kind="problem" word="Marks not kept" live>The widths are in the form, but the marks could not be kept with the photo. {trouble}</Notice>}
    </div>
  )
}

async function photoOf(id: string): Promise<Blob> {
  const response = await fetch(`/api/photos/${id}`)
  if (!response.ok) throw new Error('The photo did not come.')
  return response.blob()
}

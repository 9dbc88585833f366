'use client'

import type { Locale } from '@/lib/language/say'
import type { PhotoMarks } from '@/lib/measure/photo-marks'
import { photoTask, withWidths } from '@/lib/measure/widths-into-form'
import type { SizeFrame } from '@/lib/reports/size-frame'
import type { ReadingsForm } from '@/lib/schemas/readings'
import { keepOnDevice } from './marks-on-device'
import { MeasureButton } from './measure-button'

export { shrunk } from './open-photo'

type Props<P> = {
  readonly locale: Locale
  readonly photo: P
  readonly onChange: (photo: P) => void
  readonly frame: SizeFrame
  readonly readings: ReadingsForm
  readonly onReadings: (readings: ReadingsForm) => void
}

/** Measuring on a photo that is still on this device: its marks stay with it. Nothing where no station has a place. */
export function MeasureChosen<P extends { readonly id: string; readonly blob: Blob; readonly marks: PhotoMarks | null }>({ locale, photo, onChange, frame, readings, onReadings }: Props<P>) {
  const task = photoTask(readings, frame)
  if (task.places.length === 0) return null
  return (
    <MeasureButton locale={locale} n={1} task={task} photo={photo.blob} earlier={photo.marks} unsent onAccept={(marks, widths) => {
      keepOnDevice(photo.id, marks)
      onChange({ ...photo, marks })
      onReadings(withWidths(readings, task, widths))
    }} />
  )
}

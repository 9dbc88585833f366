'use client'

import { useEffect, useRef, useState } from 'react'
import { logForm } from '@/lib/language/log-form'
import { say, type Locale } from '@/lib/language/say'
import type { PhotoMarks } from '@/lib/measure/photo-marks'
import type { SizeFrame } from '@/lib/reports/size-frame'
import { MOST_PHOTO_BYTES, PHOTO_TYPES } from '@/lib/schemas/photo-limits'
import type { ReadingsForm } from '@/lib/schemas/readings'
import { Field } from '@/app/_components/ui/field'
import { Button } from '@/app/_components/ui/button'
import { controlLook } from '@/app/_components/ui/control-look'
import { newId } from '@/app/learn/new-id'

/** A photo chosen on this device: its id from now on, and what was marked on it. */
export type BoxPhoto = {
  readonly id: string
  readonly name: string
  readonly blob: Blob
  /** The photo as it travels, once the device has made it small; null when it can be of no use. Whoever sends waits for it. */
  readonly small: Promise<Blob | null>
  readonly marks: PhotoMarks | null
}
type Gauge = typeof import('@/app/_components/photo-gauge/chosen-photo')

type Props = {
  readonly label: string
  readonly locale: Locale
  readonly photo: BoxPhoto | null
  readonly onChange: (photo: BoxPhoto | null) => void
  /** The form whose stations take widths measured on the photo; null where it asks for none. */
  readonly measure: { readonly frame: SizeFrame; readonly readings: ReadingsForm; readonly onReadings: (readings: ReadingsForm) => void } | null
}

const fits = (file: File): boolean => file.size <= MOST_PHOTO_BYTES && PHOTO_TYPES.includes(file.type)

/** One photo, looked at and made small before it travels: the server looks again. */
export function PhotoBox({ label, locale, photo, onChange, measure }: Props) {
  const [wrong, setWrong] = useState(false)
  const [gauge, setGauge] = useState<Gauge | null>(null)
  const latest = useRef<string | null>(null)
  const box = useRef<HTMLInputElement>(null)
  // Emptied, not made anew: the keyboard stays where it was, and the box names the photo that is chosen.
  useEffect(() => { if (!photo && box.current) box.current.value = '' }, [photo])

  async function choose(file: File | undefined): Promise<void> {
    const id = file ? newId() : null
    latest.current = id
    setWrong(false)
    if (!id || !file) return onChange(null)
    // Fetched now that there is a photo; without it, and for a picture the browser cannot read, the photo goes as it is.
    const loading = import('@/app/_components/photo-gauge/chosen-photo')
    const small = loading.then((loaded) => loaded.shrunk(file)).catch(() => (fits(file) ? file : null))
    const chosen = { id, name: file.name, blob: file, small, marks: null }
    onChange(chosen)
    const blob = await small
    if (latest.current !== id) return
    setWrong(blob === null)
    onChange(blob && { ...chosen, blob })
    setGauge(blob === file ? null : await loading)
  }
  return (
    <div className="grid gap-3">
      <Field label={label} hint={say(logForm, locale, 'photoHint')} error={wrong ? say(logForm, locale, 'photoWrong') : null}>
        {(wiring) => (
          <input {...wiring} ref={box} type="file" accept={PHOTO_TYPES.join()} className={controlLook(false)}
            onChange={(event) => void choose(event.target.files?.[0])} />
        )}
      </Field>
      {photo && (
        <div className="flex flex-wrap items-center gap-3">
          <span>{photo.name}</span>
          <Button onClick={() => { box.current?.focus(); void choose(undefined) }}>{say(logForm, locale, 'removePhoto')}</Button>
          {gauge && measure && <gauge.MeasureChosen locale={locale} photo={photo} onChange={onChange} {...measure} />}
        </div>
      )}
    </div>
  )
}

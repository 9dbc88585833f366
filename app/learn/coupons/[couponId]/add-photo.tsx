'use client'

import { useRouter } from 'next/navigation'
import { useState } from 'react'
import { learn } from '@/lib/language/learn'
import { say, type Locale } from '@/lib/language/say'
import type { SecondMeasurement } from '@/lib/measure/second-measurement'
import { keepOnDevice } from '@/app/_components/photo-gauge/marks-on-device'
import { MeasureButtonLater } from '@/app/_components/photo-gauge/measure-button-later'
import { sendMarks } from '@/app/_components/photo-gauge/send-marks'
import { Button } from '@/app/_components/ui/button'
import { Notice } from '@/app/_components/ui/notice'
import { PhotoBox, type BoxPhoto } from '@/app/learn/photo-box'
import { sendPhoto, type PhotoProblem } from '@/app/learn/send-photo'

type Props = {
  readonly locale: Locale
  readonly couponId: string
  /** Which photo of the coupon it will be, from 1. */
  readonly n: number
  /** What it can be measured for; null where there is no station. */
  readonly second: SecondMeasurement | null
}

/** A photo sent after the coupon: one more, or the one that did not get through. Marks set on it travel behind it. */
export function AddPhoto({ locale, couponId, n, second }: Props) {
  const router = useRouter()
  const [photo, setPhoto] = useState<BoxPhoto | null>(null)
  const [problem, setProblem] = useState<PhotoProblem | null>(null)
  const [busy, setBusy] = useState(false)

  async function send({ id, small, marks }: BoxPhoto): Promise<void> {
    setBusy(true)
    const blob = await small
    if (!blob) return setBusy(false) // the box says why
    const trouble = await sendPhoto(couponId, id, blob)
    // Marks that do not get through stay on the device; the photo's own place below says so and sends them again.
    if (!trouble && marks) {
      keepOnDevice(id, marks)
      await sendMarks(id, marks, locale)
    }
    setProblem(trouble)
    setBusy(false)
    if (trouble) return
    setPhoto(null)
    router.refresh()
  }

  return (
    <div className="grid gap-3">
      {problem && <Notice kind="problem" word={say(learn, locale, 'notSent')} live>{say(learn, locale, problem)}</Notice>}
      <PhotoBox label={say(learn, locale, 'addPhoto')} locale={locale} photo={photo} measure={null}
        onChange={(chosen) => { setProblem(null); setPhoto(chosen) }} />
      {photo && second && (
        <MeasureButtonLater locale={locale} n={n} task={second.task} purpose={{ kind: 'second', submittedMm: second.submittedMm }} photo={photo.blob} earlier={photo.marks} unsent
          onAccept={(marks) => setPhoto({ ...photo, marks })} />
      )}
      {photo && <div><Button kind="primary" aria-disabled={busy || undefined} onClick={() => void (busy || send(photo))}>{say(learn, locale, busy ? 'sendingPhoto' : 'sendPhoto')}</Button></div>}
    </div>
  )
}

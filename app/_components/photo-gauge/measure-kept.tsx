'use client'

import { useRouter } from 'next/navigation'
import { useEffect, useState } from 'react'
import { photoGauge } from '@/lib/language/photo-gauge'
import { say, type Locale } from '@/lib/language/say'
import type { PhotoMarks } from '@/lib/measure/photo-marks'
import type { SecondMeasurement } from '@/lib/measure/second-measurement'
import { Button } from '../ui/button'
import { Notice } from '../ui/notice'
import { keepOnDevice, marksOnDevice } from './marks-on-device'
import { MeasureButtonLater } from './measure-button-later'
import { photoOf } from './photo-of'
import { sendMarks } from './send-marks'

type Props = {
  readonly locale: Locale
  readonly photoId: string
  /** Which photo of the coupon, from 1. */
  readonly n: number
  /** null where nothing can be measured any more. */
  readonly second: SecondMeasurement | null
  /** This person's marks that the server has on it. */
  readonly earlier: PhotoMarks | null
}

/** Measuring on a photo of a submitted coupon, and what became of marks that were sent along with it. */
export function MeasureKept({ locale, photoId, n, second, earlier }: Props) {
  const router = useRouter()
  const [trouble, setTrouble] = useState<string | null>(null)
  const told = (key: keyof typeof photoGauge.en): string => say(photoGauge, locale, key)

  const isMeasured = earlier !== null
  useEffect(() => {
    const left = marksOnDevice(photoId)
    if (!left) return
    if (isMeasured) keepOnDevice(photoId, null)
    else void sendMarks(photoId, left, locale).then((why) => { if (why === null) router.refresh(); else setTrouble(why) })
  }, [photoId, isMeasured, locale, router])

  async function send(marks: PhotoMarks | null): Promise<void> {
    setTrouble(null)
    if (!marks) return
    const why = await sendMarks(photoId, marks, locale)
    if (why === null) router.refresh()
    else setTrouble(why)
  }
  function forget(): void {
    keepOnDevice(photoId, null)
    setTrouble(null)
  }
  if (!second && trouble === null) return null
  return (
    <div className="grid gap-2">
      {trouble !== null && (
        <Notice kind="problem" word={told('notKeptWord')} live>
          <p>{say(photoGauge, locale, 'notKept', { n })} {trouble}</p>
          <div className="mt-2 flex flex-wrap gap-2">
            <Button onClick={() => void send(marksOnDevice(photoId))}>{told('sendAgain')}</Button>
            <Button onClick={forget}>{told('forget')}</Button>
          </div>
        </Notice>
      )}
      {second && (
        <MeasureButtonLater locale={locale} n={n} task={second.task} purpose={{ kind: 'second', submittedMm: second.submittedMm }} photo={() => photoOf(photoId)} earlier={earlier}
          onAccept={(marks) => { keepOnDevice(photoId, marks); void send(marks) }} />
      )}
    </div>
  )
}

'use client'

import { useRouter } from 'next/navigation'
import { useState } from 'react'
import { learn } from '@/lib/language/learn'
import { say, type Locale } from '@/lib/language/say'
import { Button } from '@/app/_components/ui/button'
import { Notice } from '@/app/_components/ui/notice'
import { PhotoBox, type BoxPhoto } from '@/app/learn/photo-box'
import { sendPhoto, type PhotoProblem } from '@/app/learn/send-photo'

/** A photo sent after the coupon: one more, or the one that did not get through. */
export function AddPhoto({ locale, couponId }: { readonly locale: Locale; readonly couponId: string }) {
  const router = useRouter()
  const [photo, setPhoto] = useState<BoxPhoto | null>(null)
  const [problem, setProblem] = useState<PhotoProblem | null>(null)
  const [busy, setBusy] = useState(false)

  async function send({ id, blob }: BoxPhoto): Promise<void> {
    setBusy(true)
    const trouble = await sendPhoto(couponId, id, blob)
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
      {photo && <div><Button kind="primary" aria-disabled={busy || undefined} onClick={() => void (busy || send(photo))}>{say(learn, locale, busy ? 'sendingPhoto' : 'sendPhoto')}</Button></div>}
    </div>
  )
}

'use client'

import { useState } from 'react'
import { logForm } from '@/lib/language/log-form'
import { say, type Locale } from '@/lib/language/say'
import { MOST_PHOTO_BYTES, PHOTO_TYPES } from '@/lib/schemas/photo-limits'
import { Field } from '@/app/_components/ui/field'
import { Button } from '@/app/_components/ui/button'
import { controlLook } from '@/app/_components/ui/control-look'

type Props = { readonly label: string; readonly locale: Locale; readonly photo: File | null; readonly onChange: (photo: File | null) => void }

/** One photo, looked at before it travels: the server looks again. */
export function PhotoBox({ label, locale, photo, onChange }: Props) {
  const [problem, setProblem] = useState<string | null>(null)
  const choose = (file: File | undefined): void => {
    const wrong = !file ? null : file.size > MOST_PHOTO_BYTES ? 'photoTooLarge' : PHOTO_TYPES.includes(file.type) ? null : 'photoWrongType'
    setProblem(wrong && say(logForm, locale, wrong))
    onChange(wrong ? null : (file ?? null))
  }
  return (
    <div className="grid gap-3">
      <Field label={label} hint={say(logForm, locale, 'photoHint')} error={problem}>
        {(wiring) => (
          <input {...wiring} key={photo ? 'chosen' : 'empty'} type="file" accept={PHOTO_TYPES.join(',')} className={controlLook(false)}
            onChange={(event) => choose(event.target.files?.[0])} />
        )}
      </Field>
      {photo && (
        <div className="flex flex-wrap items-center gap-3">
          <span>{photo.name}</span>
          <Button onClick={() => { setProblem(null); onChange(null) }}>{say(logForm, locale, 'removePhoto')}</Button>
        </div>
      )}
    </div>
  )
}

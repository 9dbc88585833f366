'use client'

import { useRouter } from 'next/navigation'
import { useEffect, useRef, useState } from 'react'
import type { PhotoMarks } from '@/lib/measure/photo-marks'
import type { ReadingsForm, StationBox } from '@/lib/schemas/readings'
import type { SizeFrame } from '@/lib/reports/size-frame'
import { ReadingsEditor } from '@/app/_components/readings/readings-editor'
import { SignInAgain, type SignedInBefore } from '@/app/_components/sign-in-again'
import { SendButton } from '@/app/_components/send-button'
import { Notice } from '@/app/_components/ui/notice'
import { useDraft } from '@/app/_components/use-draft'
import { useHydrated } from '@/app/_components/use-hydrated'
import type { Refused } from '@/app/_components/use-sent-form'
import type { SnippetRecord } from '@/app/_server/data/snippets'
import { sendInspection } from '@/app/teach/actions'
import { MeasurePhotos } from './measure-photos'
import { RemarkBox } from './remark-box'
import { useReleaseOnLeave } from './use-release-on-leave'

type Draft = { readonly readings: ReadingsForm; readonly comment: string }
type Props = {
  readonly couponId: string
  /** Of a class the viewer teaches; null where they read a coupon of another class. */
  readonly classId: string | null
  readonly personId: string
  readonly who: SignedInBefore
  readonly revision: number
  readonly boxes: readonly StationBox[]
  readonly vertical: boolean
  readonly frame: SizeFrame
  readonly start: ReadingsForm
  readonly correcting: boolean
  readonly snippets: readonly SnippetRecord[]
  readonly photoIds: readonly string[]
  /** What this instructor marked on them, by photo. */
  readonly ownMarks: Readonly<Record<string, PhotoMarks>>
  /** Another instructor who has this coupon open, by name. */
  readonly openElsewhere: string | null
}

const failed: Refused = { ok: false, code: 'FAILED', message: 'It did not get through. What you typed is kept on this device; send it again.', fields: {} }

/** The instructor's look. Typed readings are kept on this device until they are submitted. */
export function GradeForm({ couponId, classId, personId, who, revision, boxes, vertical, frame, start, correcting, snippets, photoIds, ownMarks, openElsewhere }: Props) {
  const router = useRouter()
  const draftKey = `toeline.look.${personId}.${couponId}.${revision}`
  const draft = useDraft<Draft>(draftKey, { readings: start, comment: '' })
  const [refused, setRefused] = useState<Refused | null>(null)
  const [busy, setBusy] = useState(false)
  const place = useRef<HTMLFormElement>(null)
  const sent = useRef(false)
  const hydrated = useHydrated()
  useReleaseOnLeave(couponId, draftKey, () => sent.current)
  const errors = Object.fromEntries(Object.entries(refused?.fields ?? {}).map(([path, text]) => [path.replace(/^readings\./, ''), text]))

  // A long form: whoever sent it is led to the first box that needs another look.
  useEffect(() => {
    if (refused !== null) place.current?.querySelector<HTMLElement>('[aria-invalid="true"]')?.focus()
  }, [refused])

  async function send(): Promise<void> {
    setBusy(true)
    try {
      const result = await sendInspection({ couponId, revision, ...draft.value })
      setRefused(result.ok ? null : result)
      if (result.ok) {
        sent.current = true
        draft.clear()
        if (correcting) router.push(`/teach/coupons/${couponId}`)
        else router.refresh() // this very address shows the graded coupon now
        return // busy until the graded coupon stands here
      }
    } catch {
      setRefused(failed)
    }
    setBusy(false)
  }

  return (
    <form ref={place} inert={!hydrated} method="post" noValidate onSubmit={(event) => { event.preventDefault(); if (!busy) void send() }} className="grid gap-8">
      {openElsewhere && <Notice kind="info" word={`${openElsewhere} has this coupon open`}>You can look all the same: whoever submits first is the look that stands, and the other is told.</Notice>}
      {correcting && <Notice kind="info" word="A correction">Your look replaces the one that stands. The earlier one stays on record.</Notice>}
      {boxes.includes('width') && <MeasurePhotos photoIds={photoIds} ownMarks={ownMarks} frame={frame} readings={draft.value.readings} onReadings={(readings) => draft.change({ ...draft.value, readings })} />}
      <ReadingsEditor locale="en" boxes={boxes} vertical={vertical} frame={frame} value={draft.value.readings} errors={errors} onChange={(readings) => draft.change({ ...draft.value, readings })} />
      <RemarkBox label={classId === null ? 'Remark to the coupon’s instructors' : 'Remark to the student'} value={draft.value.comment} error={errors['comment']} snippets={snippets} onChange={(comment) => draft.change({ ...draft.value, comment })} />
      {refused?.code === 'SIGNED_OUT' ? <SignInAgain locale="en" who={who} onSignedIn={() => { setRefused(null); void send() }} /> : refused && (
        <Notice kind="problem" word="Not submitted" live>
          <p>{refused.message}</p>
          {Object.values(refused.fields).length > 0 && <ul className="list-disc pl-5">{[...new Set(Object.values(refused.fields))].map((text) => <li key={text}>{text}</li>)}</ul>}
          {refused.code === 'NOT_FOUND' && <p>If you no longer teach this class, the coordinator knows who does. What you typed is kept on this device.</p>}
          {refused.code === 'CONFLICT' && (
            <p className="mt-2">{classId === null ? <a href="/teach">Back to your classes</a> : <><a href={`/teach/coupons/${couponId}`}>See the inspection that stands</a> · <a href={`/teach/classes/${classId}`}>Back to the class</a></>}</p>
          )}
        </Notice>
      )}
      <SendButton kind="primary" wide busy={busy}>{busy ? 'Submitting' : 'Submit the inspection'}</SendButton>
    </form>
  )
}

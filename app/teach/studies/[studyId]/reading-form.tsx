'use client'

import { useRouter } from 'next/navigation'
import { useEffect, useRef, useState, type FormEvent } from 'react'
import type { Turn } from '@/lib/reports/gauge-study-order'
import type { SizePadFrame } from '@/lib/reports/size-frame'
import { SizePad } from '@/app/_components/readings/size-pad'
import { SendButton } from '@/app/_components/send-button'
import { SignInAgain, type SignedInBefore } from '@/app/_components/sign-in-again'
import { Button } from '@/app/_components/ui/button'
import { Notice } from '@/app/_components/ui/notice'
import { TextInput } from '@/app/_components/ui/text-input'
import { useHydrated } from '@/app/_components/use-hydrated'
import type { Refused } from '@/app/_components/use-sent-form'
import { sendReading } from '../actions'

type Props = {
  readonly studyId: string
  readonly bench: readonly { readonly id: string; readonly number: number; readonly tag: string; readonly pad: SizePadFrame | null }[]
  readonly turn: Turn
  readonly done: number
  readonly all: number
  readonly rounds: number
  readonly units: 'in' | 'mm'
  readonly who: SignedInBefore
}

const failed: Refused = { ok: false, code: 'FAILED', message: 'It did not get through. What you typed is still here; send it again.', fields: {} }
const LABEL = 'Width, toe to toe'

/** One coupon at a time: its width, Enter, and the next. What was read before is not shown. */
export function ReadingForm({ studyId, bench, rounds, all, units, who, ...first }: Props) {
  const router = useRouter()
  const hydrated = useHydrated()
  const [at, setAt] = useState({ turn: first.turn, done: first.done })
  const [text, setText] = useState('')
  const [refused, setRefused] = useState<Refused | null>(null)
  const [busy, setBusy] = useState(false)
  const input = useRef<HTMLInputElement>(null)
  const coupon = bench.find(({ id }) => id === at.turn.couponId)

  // Whoever has a keyboard types straight away; on a tablet the pad is meant, and the keyboard would lie over it.
  useEffect(() => {
    if (hydrated && window.matchMedia('(pointer: fine)').matches) input.current?.focus()
  }, [hydrated])

  async function send(): Promise<void> {
    setBusy(true)
    try {
      const answer = await sendReading({ studyId, ...at.turn, width: text })
      setRefused(answer.ok ? null : answer)
      if (answer.ok) {
        setText('')
        if (answer.value.next) setAt({ turn: answer.value.next, done: answer.value.done })
        else return router.refresh() // busy until the page says who is still missing
      } else if (answer.fields['width']) input.current?.focus()
    } catch {
      setRefused(failed)
    }
    setBusy(false)
  }

  const onSubmit = (event: FormEvent<HTMLFormElement>): void => {
    event.preventDefault()
    if (!busy) void send()
  }
  const put = (next: string): void => {
    setText(next)
    setRefused(null)
  }
  return (
    <form inert={!hydrated} method="post" noValidate onSubmit={onSubmit} className="grid max-w-2xl gap-4">
      <div role="status" className="grid gap-1">
        <p className="figures text-5xl leading-none">Coupon {coupon?.number} of {bench.length}</p>
        <p className="text-xl">Round {at.turn.round} of {rounds}</p>
        <p className="text-ink-2">{coupon?.tag}</p>
      </div>
      <TextInput
        ref={input} figures label={LABEL} name="width" value={text} autoComplete="off" enterKeyHint="next" error={refused?.fields['width']}
        hint={`As your gauge says it, ${units === 'in' ? '7/16 or .44' : '11 or 11,2'}; a bare number is ${units === 'in' ? 'inches' : 'millimetres'}.`}
        onChange={(event) => put(event.target.value)}
      />
      {coupon?.pad && <SizePad locale="en" size="width" label={LABEL} units={units} gauge={coupon.pad.gauge} band={coupon.pad.band} text={text} onPut={put} />}
      {refused?.code === 'SIGNED_OUT' ? <SignInAgain locale="en" who={who} onSignedIn={() => { setRefused(null); void send() }} /> : refused && Object.keys(refused.fields).length === 0 && (
        <Notice kind="problem" word="Not taken" live>
          <p>{refused.message}</p>
          {refused.code !== 'FAILED' && <div className="mt-2"><Button onClick={() => router.refresh()}>Show what is next</Button></div>}
        </Notice>
      )}
      <div className="grid gap-2">
        <SendButton kind="primary" wide busy={busy}>{busy ? 'Sending' : 'Take this width'}</SendButton>
        <p className="text-ink-2">{at.done} of your {all} readings are in. A width that was taken stays; nobody sees it before the study is closed.</p>
      </div>
    </form>
  )
}

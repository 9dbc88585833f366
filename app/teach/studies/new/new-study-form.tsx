'use client'

import { useRouter } from 'next/navigation'
import { useEffect, useId, useRef, useState } from 'react'
import { newId } from '@/app/learn/new-id'
import { SendButton } from '@/app/_components/send-button'
import { Checkbox } from '@/app/_components/ui/checkbox'
import { FieldError } from '@/app/_components/ui/field'
import { Notice } from '@/app/_components/ui/notice'
import { Select } from '@/app/_components/ui/select'
import { TextInput } from '@/app/_components/ui/text-input'
import { useHydrated } from '@/app/_components/use-hydrated'
import type { Refused } from '@/app/_components/use-sent-form'
import { beginStudy } from '../actions'

type Group = { readonly exerciseId: string; readonly title: string; readonly coupons: readonly { readonly id: string; readonly label: string }[] }
type Props = { readonly classId: string; readonly groups: readonly Group[] }

const failed: Refused = { ok: false, code: 'FAILED', message: 'It did not get through. What you typed is still here; send it again.', fields: {} }

/** What is read, where on every coupon, and how often. Its id is made at the first try, so that it is one study however often it is sent. */
export function NewStudyForm({ classId, groups }: Props) {
  const router = useRouter()
  const hydrated = useHydrated()
  const [typed, setTyped] = useState({ name: '', place: '', rounds: '2' })
  const [exerciseId, setExerciseId] = useState(groups[0]?.exerciseId ?? '')
  const [chosen, setChosen] = useState<readonly string[]>([])
  const [refused, setRefused] = useState<Refused | null>(null)
  const [busy, setBusy] = useState(false)
  const id = useRef<string | null>(null)
  const place = useRef<HTMLFormElement>(null)
  const error = (field: string): string | undefined => refused?.fields[field]
  const set = (change: Partial<typeof typed>): void => setTyped({ ...typed, ...change })

  useEffect(() => {
    if (refused !== null) place.current?.querySelector<HTMLElement>('[aria-invalid="true"], [data-wrong] input')?.focus()
  }, [refused])

  async function send(): Promise<void> {
    setBusy(true)
    id.current ??= newId()
    try {
      const answer = await beginStudy({ id: id.current, classId, ...typed, couponIds: [...chosen] })
      setRefused(answer.ok ? null : answer)
      if (answer.ok) return router.push(`/teach/studies/${answer.value.id}`) // busy until it stands here
    } catch {
      setRefused(failed)
    }
    setBusy(false)
  }

  return (
    <form ref={place} inert={!hydrated} method="post" noValidate onSubmit={(event) => { event.preventDefault(); if (!busy) void send() }} className="grid max-w-4xl gap-6">
      <div className="grid gap-4 sm:grid-cols-2">
        <TextInput label="Name" hint="Such as “Week 14”." value={typed.name} error={error('name')} onChange={(event) => set({ name: event.target.value })} />
        <TextInput label="Where on every coupon" hint="Mark it on the plate, so that everyone reads the same spot." placeholder="2 in from the start" value={typed.place} error={error('place')} onChange={(event) => set({ place: event.target.value })} />
        <TextInput label="Rounds" hint="How often each reader reads every coupon; two or three." inputMode="numeric" figures value={typed.rounds} error={error('rounds')} onChange={(event) => set({ rounds: event.target.value })} />
        <Select
          label="Exercise" hint="Another exercise begins the choice anew." choices={groups.map(({ exerciseId: value, title }) => ({ value, label: title }))} value={exerciseId}
          onChange={(event) => { setExerciseId(event.target.value); setChosen([]) }}
        />
      </div>
      <Coupons
        coupons={groups.find((group) => group.exerciseId === exerciseId)?.coupons ?? []} chosen={chosen} rounds={typed.rounds} error={error('couponIds')}
        onChoose={(couponId, isChosen) => setChosen(isChosen ? [...chosen, couponId] : chosen.filter((each) => each !== couponId))}
      />
      {refused && Object.keys(refused.fields).length === 0 && <Notice kind="problem" word="Not opened" live>{refused.message}</Notice>}
      <SendButton kind="primary" wide busy={busy}>{busy ? 'Opening' : 'Open the study'}</SendButton>
    </form>
  )
}

type CouponsProps = {
  readonly coupons: Group['coupons']
  readonly chosen: readonly string[]
  readonly rounds: string
  readonly error: string | undefined
  readonly onChoose: (couponId: string, isChosen: boolean) => void
}

/** The coupons of an exercise, latest first. They are numbered on the bench in the order they are chosen. */
function Coupons({ coupons, chosen, rounds, error, onChoose }: CouponsProps) {
  const id = useId()
  const times = /^[2-5]$/.test(rounds.trim()) ? Number(rounds) : null
  return (
    <fieldset className="grid gap-2" data-wrong={error ? true : undefined} aria-describedby={error ? `${id}-error` : undefined}>
      <legend className="font-bold">Coupons</legend>
      <p className="max-w-prose text-ink-2">Five to ten that you have at hand, from narrow beads to wide ones: coupons that are all alike show only the measuring. They are numbered on the bench in the order you choose them.</p>
      {error && <FieldError id={`${id}-error`}>{error}</FieldError>}
      <ul className="grid gap-x-6 sm:grid-cols-2">
        {coupons.map((coupon) => {
          const number = chosen.indexOf(coupon.id) + 1
          return (
            <li key={coupon.id}>
              <Checkbox
                checked={number > 0} onChange={(event) => onChoose(coupon.id, event.target.checked)}
                label={<>{coupon.label}{number > 0 && <strong> · coupon {number}</strong>}</>}
              />
            </li>
          )
        })}
      </ul>
      <p role="status">{chosen.length === 0 ? 'None chosen yet.' : `${chosen.length} chosen${times === null ? '' : `: ${chosen.length * times} readings for each reader`}.`}</p>
    </fieldset>
  )
}

'use client'

import { useRouter } from 'next/navigation'
import { useEffect, useRef, useState } from 'react'
import type { SpecimensNeeded } from '@/lib/qualification/thickness'
import type { BendForm, TestPartsForm } from '@/lib/schemas/test-form'
import { SendButton } from '@/app/_components/send-button'
import { SignInAgain, type SignedInBefore } from '@/app/_components/sign-in-again'
import { Button } from '@/app/_components/ui/button'
import { Notice } from '@/app/_components/ui/notice'
import { RadioPills } from '@/app/_components/ui/radio-pills'
import { TextArea } from '@/app/_components/ui/text-area'
import { TextInput } from '@/app/_components/ui/text-input'
import { useDraft } from '@/app/_components/use-draft'
import { useHydrated } from '@/app/_components/use-hydrated'
import type { Refused } from '@/app/_components/use-sent-form'
import { newId } from '@/app/learn/new-id'
import { recordTest } from '@/app/teach/actions'
import { BendBoxes } from './bend-boxes'
import { BreakBoxes } from './break-boxes'
import { MacroetchBoxes } from './macroetch-boxes'

type Draft = { readonly id: string | null; readonly testedOn: string; readonly parts: TestPartsForm; readonly plateIdentity: string; readonly wireIdentity: string; readonly note: string }
type Props = {
  readonly classId: string
  readonly studentId: string
  readonly exerciseId: string
  readonly personId: string
  readonly who: SignedInBefore
  readonly weldType: 'fillet' | 'groove'
  readonly electrodeClass: string
  readonly needed: SpecimensNeeded
  readonly units: 'in' | 'mm'
  readonly today: string
}

const failed: Refused = { ok: false, code: 'FAILED', message: 'It did not get through. What you typed is kept on this device; send it again.', fields: {} }

const bend = (face: BendForm['face']): BendForm => ({ face, seen: '', indications: [] })

/** What the code asks of this plate, each part still without an answer. */
function blankParts({ faceBends, rootBends, sideBends, breaks }: SpecimensNeeded): TestPartsForm {
  const bends = [
    ...Array.from({ length: faceBends }, () => bend('face')),
    ...Array.from({ length: rootBends }, () => bend('root')),
    ...Array.from({ length: sideBends }, () => bend('side')),
  ]
  return { visual: '', bends: bends.length > 0 ? bends : null, filletBreak: breaks > 0 ? { foldedFlat: '', rootFused: '', inclusions: [] } : null, macroetch: null }
}

/** Records a test that the viewer witnessed. What is typed stays on this device until it is recorded; its id is made at the first try, so it is one test however often it is sent. */
export function TestForm(props: Props) {
  const { classId, studentId, exerciseId, needed, weldType } = props
  const router = useRouter()
  const draft = useDraft<Draft>(`toeline.test.${props.personId}.${studentId}.${exerciseId}`, {
    id: null, testedOn: props.today, parts: blankParts(needed), plateIdentity: '', wireIdentity: props.electrodeClass, note: '',
  })
  const [refused, setRefused] = useState<Refused | null>(null)
  const [busy, setBusy] = useState(false)
  const place = useRef<HTMLFormElement>(null)
  const hydrated = useHydrated()
  const { parts } = draft.value
  const errors = refused?.fields ?? {}
  const set = (change: Partial<Draft>): void => draft.change({ ...draft.value, ...change })
  const setParts = (change: Partial<TestPartsForm>): void => set({ parts: { ...parts, ...change } })

  // A long form: whoever sent it is led to the first box that needs another look.
  useEffect(() => {
    if (refused !== null) place.current?.querySelector<HTMLElement>('[aria-invalid="true"]')?.focus()
  }, [refused])

  async function send(): Promise<void> {
    setBusy(true)
    const id = draft.value.id ?? newId()
    set({ id })
    try {
      const answer = await recordTest({ ...draft.value, id, classId, studentId, exerciseId })
      setRefused(answer.ok ? null : answer)
      if (answer.ok) {
        draft.clear()
        router.push(`/teach/tests/${answer.value.id}`)
        return // busy until the recorded test stands here
      }
    } catch {
      setRefused(failed)
    }
    setBusy(false)
  }

  return (
    <form ref={place} inert={!hydrated} method="post" noValidate onSubmit={(event) => { event.preventDefault(); if (!busy) void send() }} className="grid max-w-4xl gap-8">
      {draft.restored && (
        <Notice kind="info" word="Kept on this device">
          <p>This is what you had typed before.</p>
          <div className="mt-2"><Button onClick={draft.startOver}>Start over</Button></div>
        </Notice>
      )}
      <section className="grid gap-4 sm:grid-cols-3">
        <TextInput type="date" label="Day of the test" value={draft.value.testedOn} error={errors['testedOn']} onChange={(event) => set({ testedOn: event.target.value })} />
        <TextInput label="Plate identity" hint="As stamped: heat or plate number." value={draft.value.plateIdentity} error={errors['plateIdentity']} onChange={(event) => set({ plateIdentity: event.target.value })} />
        <TextInput label="Wire or rod identity" hint="Class and lot, as on the label." value={draft.value.wireIdentity} error={errors['wireIdentity']} onChange={(event) => set({ wireIdentity: event.target.value })} />
      </section>
      <RadioPills legend="Visual inspection of the test weld" name="visual" value={parts.visual} error={errors['parts.visual'] ?? null}
        onChange={(event) => setParts({ visual: event.target.value === 'accept' ? 'accept' : event.target.value === 'reject' ? 'reject' : '' })}
        pills={[{ value: 'accept', label: 'Accepted' }, { value: 'reject', label: 'Rejected' }, { value: '', label: 'Not looked at' }]} />
      <p className="max-w-prose text-ink-2">{asked(needed, weldType)} Sizes as the gauge says them, {props.units === 'in' ? '1/16 or .06' : '1.5 or 1,5'}; a bare number is {props.units === 'in' ? 'inches' : 'millimetres'}.</p>
      <BendBoxes value={parts.bends} errors={errors} onChange={(bends) => setParts({ bends })} />
      {weldType === 'fillet' && <BreakBoxes value={parts.filletBreak} errors={errors} onChange={(filletBreak) => setParts({ filletBreak })} />}
      <MacroetchBoxes fillet={weldType === 'fillet'} value={parts.macroetch} errors={errors} onChange={(macroetch) => setParts({ macroetch })} />
      <TextArea label="Note" hint="Preheat, repairs allowed, anything the record should hold." value={draft.value.note} error={errors['note']} onChange={(event) => set({ note: event.target.value })} />
      {refused?.code === 'SIGNED_OUT' ? <SignInAgain locale="en" who={props.who} onSignedIn={() => { setRefused(null); void send() }} /> : refused && (
        <Notice kind="problem" word="Not recorded" live>
          <p>{refused.message}</p>
          {Object.entries(refused.fields).some(([field]) => field !== 'parts') && <ul className="list-disc pl-5">{[...new Set(Object.values(refused.fields))].map((text) => <li key={text}>{text}</li>)}</ul>}
        </Notice>
      )}
      <SendButton kind="primary" wide busy={busy}>{busy ? 'Recording' : 'Record this test'}</SendButton>
    </form>
  )
}

function asked({ faceBends, rootBends, sideBends, breaks, macroetches }: SpecimensNeeded, weldType: 'fillet' | 'groove'): string {
  const count = (n: number, what: string): string[] => (n === 0 ? [] : [`${n} ${what}${n === 1 ? '' : 's'}`])
  const list = [...count(faceBends, 'face bend'), ...count(rootBends, 'root bend'), ...count(sideBends, 'side bend'), ...count(breaks, 'fillet break'), ...count(macroetches, 'macroetch')].join(', ')
  return `For this plate the structural code asks for: ${list}.${weldType === 'fillet' ? ' The macroetch counts where one was made; two root bends of a soundness plate may stand for the break.' : ''}`
}

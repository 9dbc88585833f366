'use client'

import { useRouter } from 'next/navigation'
import { memo, useCallback, useEffect, useMemo, useRef, useState } from 'react'
import { NO_ANSWERS, type SetUpAnswers } from '@/lib/consumables/set-up-answers'
import { logForm } from '@/lib/language/log-form'
import { logPad } from '@/lib/language/log-pad'
import { say, type Locale } from '@/lib/language/say'
import type { ArcTimer } from '@/lib/procedure/arc-timer'
import type { Process } from '@/lib/procedure/process'
import type { PassForm } from '@/lib/schemas/passes'
import type { ReadingsForm, StationBox } from '@/lib/schemas/readings'
import type { SetUpView } from '@/lib/reports/set-up-lines'
import type { SizeFrame } from '@/lib/reports/size-frame'
import { later } from '@/app/_components/later'
import { ReadingsEditor } from '@/app/_components/readings/readings-editor'
import type { SignedInBefore } from '@/app/_components/sign-in-again'
import { SendButton } from '@/app/_components/send-button'
import { Button } from '@/app/_components/ui/button'
import { Notice } from '@/app/_components/ui/notice'
import { TextArea } from '@/app/_components/ui/text-area'
import { useDraft } from '@/app/_components/use-draft'
import { useHydrated } from '@/app/_components/use-hydrated'
import type { Refused } from '@/app/_components/use-sent-form'
import { newId } from '@/app/learn/new-id'
import { PhotoBox, type BoxPhoto } from '@/app/learn/photo-box'
import { PassBoxes } from './pass-boxes'
import { ReviewLine } from './review-line'
import { logCoupon } from './send-coupon'
import { SetUpCheck } from './set-up-check'

/** Wanted only by someone whose session ended while they wrote. */
const SignInAgain = later(() => import('@/app/_components/sign-in-again').then((module) => module.SignInAgain))
/** Wanted without a connection, when it could not be fetched any more: fetched ahead, once somebody begins to log. */
const savedHere = () => import('@/app/_components/outbox/saved-here')
const fetchAhead = (): void => void savedHere().catch(() => undefined) // asked for again when it is wanted
/** In their place when they cannot be fetched: the line above the page still says what waits, and a page that failed would say less. */
const Nothing = () => null
const SavedHere = later(() => savedHere().then((module) => module.SavedHere, () => Nothing))
const NoRoom = later(() => savedHere().then((module) => module.NoRoom, () => Nothing))

type Draft = {
  readonly id: string | null
  /** The version of the exercise this was begun on, which the coupon is judged by; drafts from before there was one have none. */
  readonly exerciseVersion?: number
  readonly passes: readonly PassForm[]
  readonly readings: ReadingsForm
  readonly note: string
  /** Arc timers of the passes and what was found at the machine; drafts from before there were any have neither. */
  readonly timers?: readonly ArcTimer[]
  readonly answers?: SetUpAnswers
}

type Props = {
  readonly locale: Locale
  readonly personId: string
  readonly who: SignedInBefore
  readonly door: '/sign-in' | '/tablet'
  readonly units: 'in' | 'mm'
  readonly classId: string
  readonly exerciseId: string
  readonly exerciseVersion: number
  readonly title: string
  readonly boxes: readonly StationBox[]
  readonly vertical: boolean
  readonly frame: SizeFrame
  readonly process: Process
  readonly expectedArcSeconds: number | null
  readonly setUp: SetUpView
  readonly blank: ReadingsForm
  readonly passes: readonly PassForm[]
  readonly passesFrom: 'last-coupon' | 'booth-card'
}

// A tap on a size must be answered at once: what it does not touch is not drawn again.
const Passes = memo(PassBoxes)
const SetUp = memo(SetUpCheck)
const NO_TIMERS: readonly ArcTimer[] = []
const NO_ERRORS: Readonly<Record<string, string>> = {}

/** Errors of one part of the form, by the path within it. */
function under(errors: Readonly<Record<string, string>>, part: string): Record<string, string> {
  return Object.fromEntries(Object.entries(errors).filter(([path]) => path.startsWith(`${part}.`)).map(([path, text]) => [path.slice(part.length + 1), text]))
}

/** How many stations have a size, and how many indications there are: for the line that says what waits on the device. */
function countReadings({ stations, indications }: ReadingsForm): { stations: number; indications: number } {
  const isMeasured = ({ at: _at, ...sizes }: ReadingsForm['stations'][number]): boolean => Object.values(sizes).some((size) => size.trim() !== '')
  return { stations: stations.filter(isMeasured).length, indications: indications.length }
}

/**
 * Logs a coupon. Everything typed is kept on the device until the server has it; the coupon's id is made at the first try and kept
 * with the draft, so however often it is sent there is one coupon.
 */
export function LogForm(props: Props) {
  const { locale, personId, classId, exerciseId } = props
  const router = useRouter()
  const draftKey = `toeline.log.${personId}.${exerciseId}`
  const draft = useDraft<Draft>(draftKey, { id: null, exerciseVersion: props.exerciseVersion, passes: props.passes, readings: props.blank, note: '' })
  const [photo, setPhoto] = useState<BoxPhoto | null>(null)
  const [refused, setRefused] = useState<Refused | 'full' | null>(null)
  const [savedId, setSavedId] = useState<string | null>(null)
  const [busy, setBusy] = useState(false)
  const sending = useRef(false)
  const place = useRef<HTMLFormElement>(null)
  const hydrated = useHydrated()
  const { id: _id, timers = NO_TIMERS, answers = NO_ANSWERS, ...form } = draft.value
  const errors = refused && refused !== 'full' ? refused.fields : NO_ERRORS

  const passErrors = useMemo(() => under(errors, 'passes'), [errors])
  const latest = useRef(draft)
  useEffect(() => { latest.current = draft })
  const changePart = useCallback((part: Partial<Draft>): void => latest.current.change({ ...latest.current.value, ...part }), [])
  const changeAnswers = useCallback((given: SetUpAnswers): void => changePart({ answers: given }), [changePart])
  const changeReadings = useCallback((readings: ReadingsForm): void => changePart({ readings }), [changePart])
  const changePasses = useCallback((passes: readonly PassForm[], running: readonly ArcTimer[]): void => changePart({ passes, timers: running }), [changePart])

  // A long form: whoever sent it is led to the first box that needs another look.
  useEffect(() => {
    if (refused !== null && refused !== 'full') place.current?.querySelector<HTMLElement>('[aria-invalid="true"]')?.focus()
  }, [refused])

  async function send(withPhoto: BoxPhoto | null = photo): Promise<void> {
    if (sending.current) return
    sending.current = true
    setBusy(true)
    const id = draft.value.id ?? newId()
    const kept = { ...draft.value, id }
    draft.change(kept)
    const blob = withPhoto && (await withPhoto.small)
    if (withPhoto && !blob) return rest() // the photo's own box says why
    const logged = await logCoupon({
      id, by: { personId, ...props.who },
      coupon: { ...form, id, classId, exerciseId, weldedAt: new Date().toISOString(), booth: null },
      photos: withPhoto && blob ? [{ id: withPhoto.id, blob, measurement: withPhoto.marks ?? undefined }] : [],
      about: { exercise: props.title, href: `/learn/${classId}/${exerciseId}/log`, draftKey, draft: kept, ...countReadings(form.readings) },
    })
    if (logged.kind === 'sent') return finish(id, logged.photo)
    setRefused(logged.kind === 'refused' ? logged.refused : logged.kind === 'full' ? 'full' : null)
    if (logged.kind === 'waiting') {
      if (logged.lasting) draft.clear()
      setSavedId(id)
    }
    rest()
  }

  function rest(): void {
    sending.current = false
    setBusy(false)
  }

  function finish(couponId: string, photoTrouble: string | null): void {
    draft.clear()
    router.push(`/learn/coupons/${couponId}${photoTrouble ? `?photo=${photoTrouble}` : ''}`)
  }

  /** The next coupon begins with this one's settings; its times, lengths and readings are its own. */
  function next(): void {
    draft.change({ id: null, exerciseVersion: props.exerciseVersion, passes: draft.value.passes.map((pass) => ({ ...pass, arcTime: '', length: '' })), readings: props.blank, note: '' })
    setPhoto(null)
    setSavedId(null)
    window.scrollTo(0, 0)
  }

  if (savedId !== null) return <SavedHere locale={locale} couponId={savedId} onNext={next} />
  return (
    <form ref={place} inert={!hydrated} method="post" noValidate onSubmit={(event) => { event.preventDefault(); void send() }} onPointerDown={fetchAhead} onKeyDown={fetchAhead}
      className="grid gap-8">
      {draft.restored && (
        <Notice kind="info" word={say(logForm, locale, 'kept')}>
          <p>{say(logForm, locale, 'restored')}</p>
          <div className="mt-2"><Button onClick={draft.startOver}>{say(logForm, locale, 'discard')}</Button></div>
        </Notice>
      )}
      <SetUp locale={locale} units={props.units} view={props.setUp} filledIn={props.passes[0]} pass={draft.value.passes[0]} answers={answers}
        onAnswers={changeAnswers} />
      <section className="grid gap-3">
        <h2 className="text-2xl">{say(logForm, locale, 'settings')}</h2>
        <p className="text-ink-2">{say(logPad, locale, props.passesFrom === 'last-coupon' ? 'fromLast' : 'fromCard')}</p>
        <Passes locale={locale} units={props.units} process={props.process} lengthMm={props.frame.lengthMm} expectedArcSeconds={props.expectedArcSeconds}
          filledIn={props.passesFrom === 'last-coupon'} value={draft.value.passes} timers={timers} errors={passErrors}
          onChange={changePasses} />
      </section>
      <ReadingsEditor locale={locale} boxes={props.boxes} vertical={props.vertical} frame={props.frame} value={draft.value.readings} errors={under(errors, 'readings')}
        onChange={changeReadings} />
      <section className="grid gap-4">
        <PhotoBox label={say(logForm, locale, 'photo')} locale={locale} photo={photo} onChange={setPhoto}
          measure={props.boxes.includes('width') ? { frame: props.frame, readings: draft.value.readings, onReadings: changeReadings } : null} />
        <TextArea label={say(logForm, locale, 'note')} value={draft.value.note} error={errors['note']} onChange={(event) => draft.change({ ...draft.value, note: event.target.value })} />
      </section>
      <ReviewLine locale={locale} units={props.units} boxes={props.boxes} vertical={props.vertical} readings={draft.value.readings} passes={draft.value.passes.length}
        running={timers.some((timer) => timer.struckAt !== null)} />
      <Refusal refused={refused} locale={locale} who={props.who} door={props.door} onSignedIn={() => { setRefused(null); void send() }} photo={photo !== null} onWithoutPhoto={() => { setPhoto(null); void send(null) }} />
      <SendButton kind="primary" wide busy={busy}>{say(logForm, locale, busy ? 'sending' : 'send')}</SendButton>
    </form>
  )
}

type RefusalProps = {
  readonly refused: Refused | 'full' | null
  readonly locale: Locale
  readonly who: SignedInBefore
  readonly door: '/sign-in' | '/tablet'
  readonly onSignedIn: () => void
  readonly photo: boolean
  readonly onWithoutPhoto: () => void
}

/** Why the coupon was not taken, beside the button that was pressed. */
function Refusal({ refused, locale, who, door, onSignedIn, photo, onWithoutPhoto }: RefusalProps) {
  if (refused === null) return null
  if (refused === 'full') return <NoRoom locale={locale} photo={photo} onWithoutPhoto={onWithoutPhoto} />
  if (refused.code === 'SIGNED_OUT') return <SignInAgain locale={locale} who={who} door={door} onSignedIn={onSignedIn} />
  const sentences = [...new Set(Object.values(refused.fields))]
  return (
    <Notice kind="problem" word={say(logForm, locale, 'notSent')} live>
      {sentences.length === 0 ? <p>{refused.message || say(logForm, locale, 'failed')}</p> : (
        <>
          <p>{say(logForm, locale, 'fix')}</p>
          <ul className="list-disc pl-5">{sentences.map((sentence) => <li key={sentence}>{sentence}</li>)}</ul>
        </>
      )}
    </Notice>
  )
}

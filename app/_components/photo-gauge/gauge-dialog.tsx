'use client'

import { useEffect, useId, useRef, useState, type SyntheticEvent } from 'react'
import { createPortal } from 'react-dom'
import { photoGauge } from '@/lib/language/photo-gauge'
import { say, type Locale } from '@/lib/language/say'
import { chosenFrom, type Chosen } from '@/lib/measure/chosen-scale'
import { knownScaleOf } from '@/lib/measure/earlier-marks'
import { marksSet, type KnownScale } from '@/lib/measure/marking'
import type { PhotoMarks } from '@/lib/measure/photo-marks'
import { PhotoProblem } from '@/lib/measure/photo-problem'
import type { StationWidth } from '@/lib/measure/widths-at-stations'
import type { PhotoTask } from '@/lib/measure/widths-into-form'
import { Button } from '../ui/button'
import { Notice } from '../ui/notice'
import { AskClose } from './ask-close'
import { MarksScreen } from './marks-screen'
import { opened, type OpenPhoto } from './open-photo'
import { ScaleChoice } from './scale-choice'
import { useMarking } from './use-marking'
import { useSize } from './use-size'
import { WidthsScreen, type Purpose } from './widths-screen'

/** The marks stay while another screen is looked at. */
type Screen = 'scale' | 'marks' | 'widths'
type Accepted = (marks: PhotoMarks, widths: readonly StationWidth[]) => void
type Props = {
  readonly locale: Locale
  readonly task: PhotoTask
  /** The photo, upright and no larger than it is kept. */
  readonly photo: Blob
  readonly purpose: Purpose
  /** Marks of this person that the photo has already, to go on from. */
  readonly earlier: PhotoMarks | null
  readonly onAccept: Accepted
  readonly onClose: () => void
}

/** Measuring on a photo, over the whole screen: the scale, the marks, the widths. Nothing is taken over before the person accepts it, nor thrown away before they are asked. */
export function GaugeDialog({ locale, task, photo, purpose, earlier, onAccept, onClose }: Props) {
  const dialog = useRef<HTMLDialogElement>(null)
  const titleId = useId()
  const open = useOpened(photo)
  const [chosen, setChosen] = useState<Chosen | null>(() => earlier && chosenFrom(knownScaleOf(earlier.scale), task.units))
  const [screen, setScreen] = useState<Screen>(earlier ? 'marks' : 'scale')
  /** Marks that are set, and those of them that closing would lose. */
  const [{ set, unsaved }, setSet] = useState({ set: 0, unsaved: 0 })
  const [asking, setAsking] = useState(false)
  const dropped = useRef(false)
  const told = (key: keyof typeof photoGauge.en): string => say(photoGauge, locale, key)

  useEffect(() => { if (!dialog.current?.open) dialog.current?.showModal() }, [])
  const close = (): void => { if (unsaved > 0) setAsking(true); else dialog.current?.close() }
  function cancel(event: SyntheticEvent): void {
    if (event.target !== event.currentTarget || unsaved === 0) return
    event.preventDefault()
    setAsking(true)
  }
  function closed(event: SyntheticEvent): void {
    if (event.target !== event.currentTarget) return
    if (unsaved === 0 || dropped.current) return onClose()
    // A browser lets a page hold back one Escape; the next one closes all the same.
    dialog.current?.showModal()
    setAsking(true)
  }
  function drop(): void {
    dropped.current = true
    setAsking(false)
    dialog.current?.close()
  }

  const body = open === null ? <p role="status" className="p-4">{told('loading')}</p>
    : open === 'failed' ? <div className="p-4"><Notice kind="problem" word={told('problemWord')} live>{told('notOpened')}</Notice></div>
    : (
      <>
        {screen === 'scale' && <ScaleChoice locale={locale} units={task.units} before={chosen} anyMarks={set > 0} onChoose={(each) => { setChosen(each); setScreen('marks') }} />}
        {chosen && <Marks screen={screen} onScreen={setScreen} locale={locale} task={task} photo={open} scale={chosen.scale} purpose={purpose} earlier={earlier} onSet={setSet} onAccept={onAccept} />}
      </>
    )
  return createPortal(
    <dialog ref={dialog} aria-labelledby={titleId} onCancel={cancel} onClose={closed}
      className="m-0 h-dvh max-h-none w-screen max-w-none bg-paper text-ink backdrop:bg-ink">
      <div className="flex h-full min-h-0 flex-col">
        <div className="flex items-center justify-between gap-2 border-b-[1.5px] border-ink p-2">
          <h2 id={titleId} className="font-head text-2xl leading-tight font-semibold">{told('title')}</h2>
          <div className="flex gap-2">
            {screen === 'marks' && <Button onClick={() => setScreen('scale')} aria-label={told('backToScale')}>{told('back')}</Button>}
            <Button onClick={close} aria-label={told('close')}><span aria-hidden="true">×</span></Button>
          </div>
        </div>
        {body}
      </div>
      {asking && <AskClose locale={locale} n={unsaved} earlier={earlier !== null} onKeep={() => setAsking(false)} onDrop={drop} />}
    </dialog>,
    document.body,
  )
}

/** The photo with its pixels; null until it is there. */
function useOpened(photo: Blob): OpenPhoto | 'failed' | null {
  const [open, setOpen] = useState<OpenPhoto | 'failed' | null>(null)
  useEffect(() => {
    let url: string | null = null
    let gone = false
    const ready = (picture: OpenPhoto): void => {
      url = picture.url
      if (gone) URL.revokeObjectURL(url)
      else setOpen(picture)
    }
    void opened(photo).then(ready, () => { if (!gone) setOpen('failed') })
    return () => {
      gone = true
      if (url) URL.revokeObjectURL(url)
    }
  }, [photo])
  return open
}

type MarksProps = {
  readonly screen: Screen
  readonly onScreen: (screen: Screen) => void
  readonly locale: Locale
  readonly task: PhotoTask
  readonly photo: OpenPhoto
  readonly scale: KnownScale
  readonly purpose: Purpose
  readonly earlier: PhotoMarks | null
  readonly onSet: (marks: { readonly set: number; readonly unsaved: number }) => void
  readonly onAccept: Accepted
}

function Marks({ screen, onScreen, locale, task, photo, scale, purpose, earlier, onSet, onAccept }: MarksProps) {
  const { ref, size } = useSize()
  const state = useMarking(photo, scale, task, earlier, size)
  const { result } = state
  const set = marksSet(state.marking)
  const unsaved = state.untouched ? 0 : set
  useEffect(() => onSet({ set, unsaved }), [onSet, set, unsaved])
  if (screen === 'scale') return null
  if (screen === 'widths' && result && !(result instanceof PhotoProblem)) {
    return <WidthsScreen locale={locale} task={task} measurement={result} purpose={purpose} onBack={() => onScreen('marks')} onAccept={(widths) => onAccept(result.marks, widths)} />
  }
  return <MarksScreen locale={locale} photo={photo} sizeRef={ref} size={size} state={state} onDone={() => onScreen('widths')} />
}

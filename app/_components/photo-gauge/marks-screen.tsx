'use client'

import { useId, useState, type KeyboardEvent } from 'react'
import { photoGauge, photoProblemWords } from '@/lib/language/photo-gauge'
import { say, type Locale } from '@/lib/language/say'
import { isMark, marksSet } from '@/lib/measure/marking'
import { placeOf } from '@/lib/measure/photo-marks'
import { PhotoProblem } from '@/lib/measure/photo-problem'
import { screenAt } from '@/lib/measure/photo-view'
import { Button } from '../ui/button'
import { Notice } from '../ui/notice'
import { LineDrawing, MarkDrawing } from './mark-drawing'
import { Loupe } from './loupe'
import { MarkTools } from './mark-tools'
import type { OpenPhoto } from './open-photo'
import { PictureStage } from './picture-stage'
import { shapeOf, slotHow, slotName } from './slot-words'
import { ToeChoice } from './toe-choice'
import type { MarkingState } from './use-marking'
import type { Size, useSize } from './use-size'

type Props = {
  readonly locale: Locale
  readonly photo: OpenPhoto
  readonly sizeRef: ReturnType<typeof useSize>['ref']
  readonly size: Size | null
  readonly state: MarkingState
  readonly onDone: () => void
}

const ARROWS: Readonly<Record<string, readonly [number, number]>> = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] }
const COARSE_STEPS = 10

/** The photo with its marks, and everything that sets, moves and takes them back. */
export function MarksScreen({ locale, photo, sizeRef, size, state, onDone }: Props) {
  const { marking, slot, current, currentSlot, guide, view, loupePerCss, result } = state
  const told = (key: keyof typeof photoGauge.en): string => say(photoGauge, locale, key)
  const howId = useId()
  const set = marksSet(marking)
  // Without a toe there is nothing to measure yet, which is no problem while marks are still to come.
  const problem = result instanceof PhotoProblem && (result.reason !== 'too-few-pairs' || state.done) ? result : null
  const isToe = currentSlot !== undefined && 'station' in currentSlot
  const scale = view?.perCss ?? 1

  function keyDown(event: KeyboardEvent): void {
    if (event.ctrlKey || event.metaKey || event.altKey) return
    const way = ARROWS[event.key]
    const by = event.shiftKey || event.repeat ? COARSE_STEPS : 1
    if (way) state.nudge(way[0] * by, way[1] * by)
    else if (event.key === 'Enter') state.setHere()
    else if (event.key === 'Backspace') state.undo()
    else if (event.key === 'e' && isToe) state.swap()
    else if (event.key === '+') state.zoom(2)
    else if (event.key === '-') state.zoom(0.5)
    else return
    event.preventDefault()
  }

  return (
    <div className="flex min-h-0 flex-1 flex-col landscape:flex-row">
      <div ref={sizeRef} className="relative min-h-40 min-w-0 flex-1">
        <PictureStage photo={photo} size={size} view={view} onView={state.setView} onTap={state.tap} grab={current && placeOf(current)} onGrab={state.move} onKeyDown={keyDown} label={told('picture')} describedBy={howId}>
          {guide && <LineDrawing from={guide.from} to={guide.to} scale={scale} dashed />}
          {marking.marks.map((mark, index) => isMark(mark) && (
            <MarkDrawing key={index} at={placeOf(mark)} shape={shapeOf(marking.slots[index])} scale={scale} strong={index === marking.at} />
          ))}
        </PictureStage>
        {current && view && size && <CornerLoupe key={marking.at} at={screenAt(view, size, placeOf(current))} size={size}>
          {(onTap) => <Loupe photo={photo} mark={current} shape={shapeOf(currentSlot)} perCss={loupePerCss} label={told('loupe')} onDrag={state.move} onTap={onTap} />}
        </CornerLoupe>}
      </div>
      <div className="grid max-h-[55%] shrink-0 content-start gap-2 overflow-y-auto p-2 landscape:max-h-none landscape:w-92 lg:p-4">
        <div id={howId} role="status" className="min-h-20">
          <p className="font-head text-xl leading-tight font-semibold">{slot ? slotName(slot, locale) : told('allMarked')} <span className="text-base font-normal text-ink-2">{slot && say(photoGauge, locale, 'progress', { n: set + 1, of: marking.marks.length })}</span></p>
          {slot && <p>{slotHow(slot, locale)} {state.wholeShown && told('twoTaps')}</p>}
          {current && currentSlot && <p className="text-ink-2"><span className="sr-only">{say(photoGauge, locale, 'placed', { mark: slotName(currentSlot, locale) })}</span> {isToe && told(current.snapped ? 'snapped' : state.noEdge ? 'noEdge' : 'ownTap')}</p>}
        </div>
        {problem && <Notice kind="problem" word={told('problemWord')} live>{say(photoProblemWords, locale, problem.reason)}</Notice>}
        <MarkTools locale={locale} state={state} />
        {(isToe || (slot && 'station' in slot)) && <ToeChoice locale={locale} state={state} />}
        {(isToe || (slot && 'station' in slot)) && <Button kind="primary" wide disabled={result === null || result instanceof PhotoProblem || result.widths.length === 0} onClick={onDone}>{told('showWidths')}</Button>}
      </div>
    </div>
  )
}

type CornerProps = { readonly at: { readonly x: number; readonly y: number }; readonly size: Size; readonly children: (onTap: () => void) => React.ReactNode }

/** The corner of the photo away from the mark, where the finger that sets it hides nothing; a tap takes the other side. */
function CornerLoupe({ at, size, children }: CornerProps) {
  const [other, setOther] = useState(false)
  const left = (at.x > size.width / 2) !== other
  const top = at.y > size.height / 2
  return <div className={`absolute m-1 ${left ? 'left-0' : 'right-0'} ${top ? 'top-0' : 'bottom-0'}`}>{children(() => setOther(!other))}</div>
}

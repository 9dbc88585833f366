'use client'

import { useId, type KeyboardEvent } from 'react'
import { photoGauge, photoProblemWords } from '@/lib/language/photo-gauge'
import { say, type Locale } from '@/lib/language/say'
import { isMark } from '@/lib/measure/marking'
import { placeOf } from '@/lib/measure/photo-marks'
import { PhotoProblem } from '@/lib/measure/photo-problem'
import { Button } from '../ui/button'
import { Notice } from '../ui/notice'
import { LineDrawing, MarkDrawing } from './mark-drawing'
import { Loupe } from './loupe'
import { NudgePad } from './nudge-pad'
import type { OpenPhoto } from './open-photo'
import { PictureStage } from './picture-stage'
import { shapeOf, slotHow, slotName } from './slot-words'
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
  const set = marking.marks.filter((mark) => mark !== null).length
  // Without a toe there is nothing to measure yet, which is no problem while marks are still to come.
  const problem = result instanceof PhotoProblem && (result.reason !== 'too-few-pairs' || state.done) ? result : null
  const isToe = currentSlot !== undefined && 'station' in currentSlot
  const scale = view?.perCss ?? 1

  function keyDown(event: KeyboardEvent): void {
    const way = ARROWS[event.key]
    const by = event.shiftKey ? COARSE_STEPS : 1
    if (way) state.nudge(way[0] * by, way[1] * by)
    else if (event.key === 'Enter') state.setHere()
    else if (event.key === 'Backspace') state.undo()
    else if (event.key === '+') state.zoom(2)
    else if (event.key === '-') state.zoom(0.5)
    else return
    event.preventDefault()
  }

  return (
    <div className="grid min-h-0 flex-1 grid-rows-[minmax(12rem,1fr)_auto] overflow-y-auto lg:grid-cols-[minmax(0,1fr)_24rem] lg:grid-rows-1">
      <PictureStage photo={photo} sizeRef={sizeRef} size={size} view={view} onView={state.setView} onTap={state.tap} onKeyDown={keyDown} label={told('picture')} describedBy={howId}>
        {guide && <LineDrawing from={guide.from} to={guide.to} scale={scale} dashed />}
        {marking.marks.map((mark, index) => isMark(mark) && (
          <MarkDrawing key={index} at={placeOf(mark)} shape={shapeOf(marking.slots[index])} scale={scale} strong={index === marking.at} />
        ))}
      </PictureStage>
      <div className="grid content-start gap-2 p-2 lg:overflow-y-auto lg:p-4">
        <div id={howId} role="status">
          <p className="font-head text-xl leading-tight font-semibold">{slot ? slotName(slot, locale) : told('allMarked')} <span className="text-base font-normal text-ink-2">{slot && say(photoGauge, locale, 'progress', { n: set + 1, of: marking.marks.length })}</span></p>
          <p>{slot ? slotHow(slot, locale) : ''} {slot && state.wholeShown && told('twoTaps')}</p>
          {current && currentSlot && <p className="text-ink-2">{say(photoGauge, locale, 'placed', { mark: slotName(currentSlot, locale) })} {isToe && told(current.snapped ? 'snapped' : 'ownTap')}</p>}
        </div>
        {problem && <Notice kind="problem" word={told('problemWord')} live>{say(photoProblemWords, locale, problem.reason)}</Notice>}
        <div className="flex flex-wrap gap-2">
          <Loupe photo={photo} mark={current} shape={shapeOf(currentSlot)} perCss={loupePerCss} label={told('loupe')} onDrag={state.move} />
          <NudgePad locale={locale} disabled={!current} onNudge={state.nudge} />
        </div>
        <div className="flex flex-wrap gap-2">
          {isToe && current && <Button onClick={state.swap}>{told(current.snapped ? 'useTap' : 'useEdge')}</Button>}
          <Button onClick={state.undo} disabled={marking.order.length === 0}>{told('undo')}</Button>
          {slot && 'station' in slot && <Button onClick={state.skip}>{told('skip')}</Button>}
          <Button onClick={() => state.zoom(2)} aria-label={told('zoomIn')}>+</Button>
          <Button onClick={() => state.zoom(0.5)} aria-label={told('zoomOut')}>−</Button>
          <Button onClick={state.whole}>{told('wholePhoto')}</Button>
          <Button onClick={() => state.goTo(-1)} disabled={!current} aria-label={told('earlier')}><span aria-hidden="true">‹</span></Button>
          <Button onClick={() => state.goTo(1)} disabled={!current} aria-label={told('later')}><span aria-hidden="true">›</span></Button>
        </div>
        {result !== null && !(result instanceof PhotoProblem) && result.widths.length > 0 && <Button kind="primary" wide onClick={onDone}>{told('showWidths')}</Button>}
      </div>
    </div>
  )
}

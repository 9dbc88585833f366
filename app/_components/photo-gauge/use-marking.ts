'use client'

import { useState } from 'react'
import { markingFrom } from '@/lib/measure/earlier-marks'
import {
  adjust, currentMark, markedEnds, markedScale, measured, nextSlot, place, rescaled, skipStation, startMarking, step, targetSlot, undo,
  type KnownScale, type Marking, type Slot,
} from '@/lib/measure/marking'
import { LEAST_SD_PX, placeOf, type Mark, type PhotoMarks } from '@/lib/measure/photo-marks'
import { PhotoProblem } from '@/lib/measure/photo-problem'
import { around, following, wholePicture, within, zoomed, type PhotoView } from '@/lib/measure/photo-view'
import type { Point } from '@/lib/measure/point'
import { snappedMark } from '@/lib/measure/snap-mark'
import { stationGuide, type StationGuide } from '@/lib/measure/station-guide'
import type { PhotoTask } from '@/lib/measure/widths-into-form'
import type { OpenPhoto } from './open-photo'
import type { Size } from './use-size'

/** How far off a place is marked, standard deviation in pixels of the screen: by mouse or pen, by a finger. Common practice, no source. */
const SD_CSS = { fine: 1, finger: 3 } as const
/** A tap that would be less sure than this, pixels of the picture, only brings its place nearer. */
const COARSE_PX = 4
/** Shown then: pixels of the picture to one of the screen. */
const NEAR_PER_CSS = 0.8
/** A station fills the screen with so much of the line across it. */
const STATION_SHARE = 1.2
/** The magnifier shows its place so many times larger than the photo. */
const LOUPE = 4
const SNAP_SDS = 3

const toeOf = (slot: Slot | undefined): slot is Extract<Slot, { station: number }> => slot !== undefined && 'station' in slot

/**
 * Marks being set on a photo, what they measure so far, and the part of it that is shown.
 *
 * @param earlier marks to go on from; null begins without any
 */
export function useMarking(photo: OpenPhoto, scale: KnownScale, task: PhotoTask, earlier: PhotoMarks | null, size: Size | null) {
  const shares = task.places.map(({ atMm }) => atMm / task.weldLengthMm)
  const [first] = useState(() => {
    const pixels = { widthPx: photo.widthPx, heightPx: photo.heightPx }
    return earlier ? markingFrom(earlier, scale, pixels, task) : startMarking(scale, pixels, shares.length)
  })
  const [marking, setMarking] = useState(first)
  if (marking.scale !== scale) setMarking(rescaled(marking, scale))
  const [asked, setView] = useState<PhotoView | null>(null)
  /** The mark beside which no edge was found when one was asked for. */
  const [edgeless, setEdgeless] = useState<Mark | null>(null)
  const picture = { width: photo.widthPx, height: photo.heightPx }
  const view = size && within(asked ?? wholePicture(picture, size), picture, size)
  const result = measured(marking)
  const target = targetSlot(marking)
  const slot = target === null ? null : (marking.slots[target] ?? null)
  const current = currentMark(marking)
  const currentSlot = marking.at === null ? undefined : marking.slots[marking.at]
  const guide = slot && toeOf(slot) ? guideOf(marking, shares[slot.station] ?? 0) : null
  const loupePerCss = Math.min(2, Math.max(0.125, (view?.perCss ?? 1) / LOUPE))

  /** Where the next mark is likely to be. */
  const lookAt = (next: Marking): void => {
    const to = targetSlot(next)
    const ahead = to === null ? undefined : next.slots[to]
    const line = toeOf(ahead) ? guideOf(next, shares[ahead.station] ?? 0) : null
    if (line && size) setView(around(line.middle, STATION_SHARE * Math.hypot(line.to.x - line.from.x, line.to.y - line.from.y), size))
    else if (!toeOf(ahead)) setView(null)
  }
  const change = (next: Marking): void => {
    setMarking(next)
    if (targetSlot(next) !== target) lookAt(next)
  }

  function markAt(at: Point, sdPx: number, of: Slot | null | undefined): Mark {
    const own: Mark = { tap: at, snapped: null, sdPx: Math.max(LEAST_SD_PX, sdPx) }
    const line = of && toeOf(of) ? guideOf(marking, shares[of.station] ?? 0) : null
    if (!line || !of) return own
    const first = of.kind === 'toe-b' ? marking.marks[marking.slots.indexOf(of) - 1] : null
    const other = first && first !== 'skipped' ? placeOf(first) : null
    try {
      return snappedMark(photo, at, line.along, { reachPx: SNAP_SDS * sdPx, tapSdPx: own.sdPx, other })
    } catch (problem) {
      if (problem instanceof PhotoProblem) return own // too near the border for an edge to be looked for
      throw problem
    }
  }

  function tap(at: Point, fine: boolean): void {
    if (!view || target === null) return
    const sdPx = SD_CSS[fine ? 'fine' : 'finger'] * view.perCss
    if (sdPx > COARSE_PX) setView({ middle: at, perCss: NEAR_PER_CSS })
    else put(at, sdPx)
  }

  function put(at: Point, sdPx: number): void {
    const mark = markAt(at, sdPx, slot)
    setEdgeless(mark.snapped ? null : mark)
    change(place(marking, mark))
  }

  /** Moves the mark by hand: from then on its own place counts, as finely as the magnifier shows it. */
  function move(by: Point): void {
    if (!current) return
    const from = placeOf(current)
    const held = (value: number, most: number): number => Math.min(most - 1, Math.max(0, value))
    const to = { x: held(from.x + by.x, photo.widthPx), y: held(from.y + by.y, photo.heightPx) }
    setMarking(adjust(marking, { tap: to, snapped: null, sdPx: Math.max(LEAST_SD_PX, loupePerCss) }))
    if (view && size && asked) setView(following(view, size, to))
  }

  const at = current && placeOf(current)
  /** Goes to another mark and brings it into view. */
  function goTo(by: -1 | 1): void {
    const next = step(marking, by)
    const there = currentMark(next)
    setMarking(next)
    if (there && view) setView({ middle: placeOf(there), perCss: Math.min(view.perCss, NEAR_PER_CSS) })
  }

  return {
    marking, result, slot, current, currentSlot, guide, view, loupePerCss, setView, tap, move,
    wholeShown: asked === null,
    /** From the keyboard: the mark is put down in the middle of what is shown, or beside the weld, to be moved from there. */
    setHere: () => { if (view && target !== null) put(guide && slot ? nearerEnd(guide, slot) : view.middle, SD_CSS.fine * view.perCss) },
    /** Whole pixels of the picture. */
    nudge: (dx: number, dy: number) => move({ x: dx, y: dy }),
    zoom: (factor: number) => { if (view && size) setView(zoomedOrWhole(zoomed(view, factor, at && (marking.moving || factor > 1) ? at : view.middle), wholePicture(picture, size))) },
    whole: () => setView(null),
    undo: () => change(undo(marking)),
    goTo,
    skip: () => change(skipStation(marking)),
    /** The edge or the tap, whichever does not count now. */
    swap: () => {
      if (!current || !view) return
      const sdPx = Math.max(LEAST_SD_PX, SD_CSS.finger * view.perCss)
      const again: Mark = current.snapped ? { tap: current.tap, snapped: null, sdPx } : markAt(current.tap, sdPx, currentSlot)
      setEdgeless(!current.snapped && !again.snapped ? current : null)
      if (!current.snapped && !again.snapped) return
      setMarking(adjust(marking, again))
    },
    noEdge: current !== null && edgeless === current,
    done: nextSlot(marking) === null,
    /** Nothing was set, moved or taken away yet. */
    untouched: marking === first,
  }
}

/** A view as far out as the whole picture is the whole picture, whatever becomes of the screen. */
const zoomedOrWhole = (view: PhotoView, whole: PhotoView): PhotoView | null => (view.perCss >= whole.perCss ? null : view)

export type MarkingState = ReturnType<typeof useMarking>

/** From the keyboard a toe begins a third of the way out on its side of the line. */
function nearerEnd({ middle, from, to }: StationGuide, slot: Slot): Point {
  const end = slot.kind === 'toe-a' ? from : to
  return { x: middle.x + (end.x - middle.x) / 3, y: middle.y + (end.y - middle.y) / 3 }
}

function guideOf(marking: Marking, share: number): StationGuide | null {
  const [scale, ends] = [markedScale(marking), markedEnds(marking)]
  if (!scale || !ends) return null
  try {
    return stationGuide(scale, ends, share)
  } catch (problem) {
    if (problem instanceof PhotoProblem) return null
    throw problem
  }
}

'use client'

import { useEffect, useRef, type KeyboardEvent, type PointerEvent, type ReactNode, type WheelEvent } from 'react'
import { pictureAt, screenAt, viewBoxOf, within, zoomed, type PhotoView } from '@/lib/measure/photo-view'
import type { Point } from '@/lib/measure/point'
import type { OpenPhoto } from './open-photo'
import type { Size } from './use-size'

type Props = {
  readonly photo: OpenPhoto
  readonly size: Size | null
  readonly view: PhotoView | null
  readonly onView: (view: PhotoView) => void
  /** A place tapped, pixels of the picture; `fine` when by a mouse or pen. */
  readonly onTap: (place: Point, fine: boolean) => void
  /** The mark that a drag beginning on it moves. */
  readonly grab: Point | null
  /** That mark was dragged by so much, pixels of the picture. */
  readonly onGrab: (by: Point) => void
  readonly onKeyDown: (event: KeyboardEvent) => void
  readonly label: string
  readonly describedBy: string
  readonly children: ReactNode
}

/** A finger that moves less than this has tapped, CSS pixels. */
const SLACK = 8
/** A drag that begins this near to the mark moves it: by a finger, by mouse or pen. */
const GRAB = { finger: 28, fine: 14 } as const

/** The photo: a tap sets a mark, a drag on the latest mark moves it, elsewhere one finger or the mouse moves the picture, two fingers or the wheel zoom it. */
export function PictureStage({ photo, size, view, onView, onTap, grab, onGrab, onKeyDown, label, describedBy, children }: Props) {
  const pointers = useRef(new Map<number, Point>())
  const moved = useRef(false)
  const grabbed = useRef(false)
  const element = useRef<HTMLDivElement>(null)
  useEffect(() => element.current?.focus(), [])
  const picture = { width: photo.widthPx, height: photo.heightPx }

  const placeOn = (event: PointerEvent | WheelEvent): Point => {
    const box = event.currentTarget.getBoundingClientRect()
    return { x: event.clientX - box.left, y: event.clientY - box.top }
  }

  function down(event: PointerEvent): void {
    if (event.button > 0) return
    event.currentTarget.setPointerCapture(event.pointerId)
    if (pointers.current.size === 0) moved.current = false
    else moved.current = true // a second finger: no tap
    const at = placeOn(event)
    const mark = grab && view && size ? screenAt(view, size, grab) : null
    grabbed.current = pointers.current.size === 0 && mark !== null && Math.hypot(mark.x - at.x, mark.y - at.y) < GRAB[event.pointerType === 'touch' ? 'finger' : 'fine']
    pointers.current.set(event.pointerId, at)
  }

  function move(event: PointerEvent): void {
    const before = pointers.current.get(event.pointerId)
    if (!before || !size || !view) return
    const now = placeOn(event)
    const other = [...pointers.current].find(([id]) => id !== event.pointerId)?.[1]
    if (!other && !moved.current && Math.hypot(now.x - before.x, now.y - before.y) < SLACK) return
    moved.current = true
    pointers.current.set(event.pointerId, now)
    if (other) {
      const factor = Math.hypot(now.x - other.x, now.y - other.y) / Math.max(1, Math.hypot(before.x - other.x, before.y - other.y))
      onView(within(zoomed(view, factor, pictureAt(view, size, other)), picture, size))
      return
    }
    if (grabbed.current) {
      onGrab({ x: (now.x - before.x) * view.perCss, y: (now.y - before.y) * view.perCss })
      return
    }
    onView(within({ ...view, middle: { x: view.middle.x - (now.x - before.x) * view.perCss, y: view.middle.y - (now.y - before.y) * view.perCss } }, picture, size))
  }

  function up(event: PointerEvent): void {
    if (!pointers.current.delete(event.pointerId) || moved.current || !size || !view) return
    const { x, y } = pictureAt(view, size, placeOn(event))
    if (x >= -0.5 && y >= -0.5 && x <= photo.widthPx - 0.5 && y <= photo.heightPx - 0.5) onTap(held({ x, y }, photo), event.pointerType !== 'touch')
  }

  function wheel(event: WheelEvent): void {
    if (size && view) onView(within(zoomed(view, Math.exp(-event.deltaY / 400), pictureAt(view, size, placeOn(event))), picture, size))
  }

  return (
    <div
      ref={element} role="application" tabIndex={0} aria-label={label} aria-describedby={describedBy} onKeyDown={onKeyDown}
      onPointerDown={down} onPointerMove={move} onPointerUp={up} onPointerCancel={(event) => pointers.current.delete(event.pointerId)} onWheel={wheel}
      className="absolute inset-0 touch-none overflow-hidden bg-plate-2 select-none focus-visible:outline-3 focus-visible:-outline-offset-3 focus-visible:outline-focus"
    >
      {size && view && (
        <svg viewBox={viewBoxOf(view, size)} width={size.width} height={size.height} aria-hidden="true" className="block cursor-crosshair">
          <image href={photo.url} x={-0.5} y={-0.5} width={photo.widthPx} height={photo.heightPx} />
          {children}
        </svg>
      )}
    </div>
  )
}

/** The middle of the outermost pixels is the border of what can be marked. */
function held({ x, y }: Point, { widthPx, heightPx }: OpenPhoto): Point {
  return { x: Math.min(widthPx - 1, Math.max(0, x)), y: Math.min(heightPx - 1, Math.max(0, y)) }
}

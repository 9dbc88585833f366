'use client'

import { useRef, type PointerEvent } from 'react'
import { placeOf, type Mark } from '@/lib/measure/photo-marks'
import { viewBoxOf } from '@/lib/measure/photo-view'
import type { Point } from '@/lib/measure/point'
import { MarkDrawing, type MarkShape } from './mark-drawing'
import type { OpenPhoto } from './open-photo'

const SIDE = 136
/** A finger that moves less than this has tapped, CSS pixels. */
const SLACK = 6

type Props = {
  readonly photo: OpenPhoto
  readonly mark: Mark
  readonly shape: MarkShape
  /** Pixels of the picture to one of the screen, in the magnifier. */
  readonly perCss: number
  readonly label: string
  /** The mark was dragged by so much, pixels of the picture. */
  readonly onDrag: (by: Point) => void
  readonly onTap: () => void
}

/** The surroundings of the mark that is being set, larger than on the photo. Dragging in it moves the picture under the mark; a tap moves it out of the way. */
export function Loupe({ photo, mark, shape, perCss, label, onDrag, onTap }: Props) {
  const last = useRef<Point | null>(null)
  const moved = useRef(false)
  const place = placeOf(mark)
  const move = (event: PointerEvent): void => {
    if (!last.current) return
    const [dx, dy] = [event.clientX - last.current.x, event.clientY - last.current.y]
    if (!moved.current && Math.hypot(dx, dy) < SLACK) return
    if (moved.current) onDrag({ x: -dx * perCss, y: -dy * perCss })
    moved.current = true
    last.current = { x: event.clientX, y: event.clientY }
  }
  const up = (): void => {
    if (last.current && !moved.current) onTap()
    last.current = null
  }
  return (
    <svg
      role="img" aria-label={label} width={SIDE} height={SIDE} viewBox={viewBoxOf({ middle: place, perCss }, { width: SIDE, height: SIDE })}
      className="block cursor-move touch-none border-[1.5px] border-ink bg-plate-2 outline-2 outline-paper select-none"
      onPointerDown={(event) => { event.currentTarget.setPointerCapture(event.pointerId); moved.current = false; last.current = { x: event.clientX, y: event.clientY } }}
      onPointerMove={move} onPointerUp={up} onPointerCancel={() => { last.current = null }}
    >
      <image href={photo.url} x={-0.5} y={-0.5} width={photo.widthPx} height={photo.heightPx} />
      {mark.snapped && <MarkDrawing at={mark.tap} shape={shape} scale={perCss} dashed />}
      <MarkDrawing at={place} shape={shape} scale={perCss * 1.4} strong />
    </svg>
  )
}

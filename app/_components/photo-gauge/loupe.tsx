'use client'

import { useRef, type PointerEvent } from 'react'
import { placeOf, type Mark } from '@/lib/measure/photo-marks'
import { viewBoxOf } from '@/lib/measure/photo-view'
import type { Point } from '@/lib/measure/point'
import { MarkDrawing, type MarkShape } from './mark-drawing'
import type { OpenPhoto } from './open-photo'

const SIDE = 152

type Props = {
  readonly photo: OpenPhoto
  readonly mark: Mark | null
  readonly shape: MarkShape
  /** Pixels of the picture to one of the screen, in the magnifier. */
  readonly perCss: number
  readonly label: string
  /** The mark was dragged by so much, pixels of the picture. */
  readonly onDrag: (by: Point) => void
}

/** The surroundings of the mark that is being set, larger than on the photo. Dragging in it moves the picture under the mark. */
export function Loupe({ photo, mark, shape, perCss, label, onDrag }: Props) {
  const last = useRef<Point | null>(null)
  if (!mark) return <div aria-hidden="true" className="size-38 shrink-0 border-[1.5px] border-dashed border-line" />
  const place = placeOf(mark)
  const move = (event: PointerEvent): void => {
    if (!last.current) return
    onDrag({ x: -(event.clientX - last.current.x) * perCss, y: -(event.clientY - last.current.y) * perCss })
    last.current = { x: event.clientX, y: event.clientY }
  }
  return (
    <svg
      role="img" aria-label={label} width={SIDE} height={SIDE} viewBox={viewBoxOf({ middle: place, perCss }, { width: SIDE, height: SIDE })}
      className="shrink-0 cursor-move touch-none border-[1.5px] border-ink bg-plate-2"
      onPointerDown={(event) => { event.currentTarget.setPointerCapture(event.pointerId); last.current = { x: event.clientX, y: event.clientY } }}
      onPointerMove={move} onPointerUp={() => { last.current = null }} onPointerCancel={() => { last.current = null }}
    >
      <image href={photo.url} x={-0.5} y={-0.5} width={photo.widthPx} height={photo.heightPx} />
      {mark.snapped && <MarkDrawing at={mark.tap} shape={shape} scale={perCss} dashed />}
      <MarkDrawing at={place} shape={shape} scale={perCss * 1.4} strong />
    </svg>
  )
}

import type { Point } from '@/lib/measure/point'

/** corner: of the scale. end: of the weld. toe: on it. */
export type MarkShape = 'corner' | 'end' | 'toe'

const SHAPES: Readonly<Record<MarkShape, string>> = {
  corner: 'M-9-9h18v18h-18zM0-4V4M-4 0H4', end: 'M0-11 11 0 0 11-11 0zM0-4V4M-4 0H4', toe: 'M-10 0H-3M3 0H10M0-10V-3M0 3V10',
}

type Props = { readonly at: Point; readonly shape: MarkShape; readonly scale: number; readonly strong?: boolean; readonly dashed?: boolean }

/** One mark on a photo: black on white, so that it shows on any steel. `scale`: pixels of the picture to one of the screen. */
export function MarkDrawing({ at, shape, scale, strong = false, dashed = false }: Props) {
  const common = { d: SHAPES[shape], fill: 'none', strokeDasharray: dashed ? '3 3' : undefined } as const
  return (
    <g transform={`translate(${at.x} ${at.y}) scale(${scale})`}>
      <path {...common} stroke="white" strokeWidth={strong ? 6 : 4} />
      <path {...common} stroke="black" strokeWidth={strong ? 3 : 1.6} />
    </g>
  )
}

type LineProps = { readonly from: Point; readonly to: Point; readonly scale: number; readonly dashed?: boolean }

export function LineDrawing({ from, to, scale, dashed = false }: LineProps) {
  const common = { x1: from.x, y1: from.y, x2: to.x, y2: to.y, strokeDasharray: dashed ? `${6 * scale} ${5 * scale}` : undefined }
  return (
    <g>
      <line {...common} stroke="white" strokeWidth={4 * scale} />
      <line {...common} stroke="black" strokeWidth={1.6 * scale} />
    </g>
  )
}

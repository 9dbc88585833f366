import { myProgress } from '@/lib/language/my-progress'
import { studentEye } from '@/lib/language/student-eye'
import { say, type Locale } from '@/lib/language/say'
import type { EyeDrawing, PlacedEye } from '@/lib/reports/eye-over-time'

type Frame = { readonly width: number; readonly height: number; readonly left: number; readonly right: number; readonly top: number; readonly bottom: number }
type Props = {
  readonly sentences: readonly string[]
  readonly drawing: (EyeDrawing & { readonly scale: string }) | null
  readonly frame: Frame
  readonly locale: Locale
  /** Whether the student reads it, or their staff. */
  readonly who?: 'student' | 'other'
}

/** How well the student sees their own welds: the sentences, and each coupon's widths against the instructor's. */
export function EyeFigure({ sentences, drawing, frame, locale, who = 'student' }: Props) {
  const told = (key: keyof typeof studentEye.en): string => say(who === 'other' ? studentEye : myProgress, locale, key)
  return (
    <section className="grid gap-2">
      <h2 className="text-2xl">{told('eyeTitle')}</h2>
      {sentences.map((sentence, index) => <p key={sentence} className={index === 0 ? 'font-bold' : ''}>{sentence}</p>)}
      {drawing && (
        <figure className="max-w-xl">
          <svg viewBox={`0 0 ${frame.width} ${frame.height}`} role="img" aria-label={sentences.join(' ')} className="block h-auto w-full">
            {drawing.band && <rect x={frame.left} y={drawing.band.top} width={frame.right - frame.left} height={Math.max(1, drawing.band.bottom - drawing.band.top)} className="fill-band" />}
            <line x1={frame.left} x2={frame.right} y1={drawing.zeroY} y2={drawing.zeroY} className="stroke-ink" strokeWidth={1.25} />
            <text x={frame.left} y={frame.top} className="figures fill-ink-2 text-[12px]">+{drawing.scale} {told('eyeLarger')}</text>
            <text x={frame.left} y={frame.bottom + 8} className="figures fill-ink-2 text-[12px]">−{drawing.scale} {told('eyeSmaller')}</text>
            {drawing.points.map((point) => point.y !== null && <EyeMark key={point.key} point={point} y={point.y} />)}
          </svg>
          <figcaption className="text-base text-ink-2">{told('eyeDrawing')}</figcaption>
        </figure>
      )}
    </section>
  )
}

const R = 4

function EyeMark({ point: { agrees, x }, y }: { readonly point: PlacedEye; readonly y: number }) {
  if (agrees === null) return <circle cx={x} cy={y} r={R} className="fill-plate stroke-open" strokeWidth={1.5} strokeDasharray="2 2" />
  return agrees ? <circle cx={x} cy={y} r={R} className="fill-ink" /> : <rect x={x - R} y={y - R} width={2 * R} height={2 * R} className="fill-plate stroke-ink" strokeWidth={2} />
}

import type { BeadStrip } from '@/lib/reports/bead-strip'
import { MarkPath } from './mark-path'

/** Size of the points and lines, in the drawing's units. */
type Weight = { readonly line: number; readonly point: number }

type BeadStripDrawingProps = {
  readonly strip: BeadStrip
  readonly label: string | null
  readonly className: string
  /** Where something is about to be placed. */
  readonly cursor?: { readonly x: number; readonly y: number }
}

/** The drawn strip alone. Its words stand beside it or in its label; hidden from screen readers when `label` is null. */
export function BeadStripDrawing({ strip, label, className, cursor }: BeadStripDrawingProps) {
  const row = strip.labelY === null
  const weight = row ? { line: 1.75, point: 2 } : { line: 2.25, point: 2.75 }
  return (
    <svg viewBox={`0 0 ${strip.width} ${strip.height}`} className={`block h-auto w-full overflow-visible ${className}`} {...(label === null ? { 'aria-hidden': true } : { role: 'img', 'aria-label': label })}>
      <line x1={strip.left} x2={strip.right} y1={strip.axisY} y2={strip.axisY} className="stroke-open" strokeWidth={1} strokeDasharray="2 4" />
      {strip.body && <path d={strip.body} className="fill-bead" />}
      <Band strip={strip} />
      <Restarts strip={strip} />
      {strip.toes.map((toe) => (
        <path key={toe.d} d={toe.d} fill="none" className="stroke-ink" strokeWidth={weight.line} strokeLinecap="round" strokeDasharray={toe.sure ? undefined : '1 5'} />
      ))}
      <Readings strip={strip} weight={weight} />
      {strip.gaps.map((gap) => (
        <circle key={gap.x} cx={gap.x} cy={strip.axisY} r={row ? 4 : 6} fill="none" className="stroke-open" strokeWidth={2} strokeDasharray="3.1 3.1" />
      ))}
      {strip.marks.map((mark, i) => (
        <MarkPath key={i} mark={mark} />
      ))}
      <Rejected strip={strip} />
      {strip.ruler.length > 0 && <Ruler strip={strip} />}
      {cursor && (
        <g className="stroke-focus" fill="none" strokeWidth={2}>
          <path d={`M${cursor.x},4V${cursor.y - 9}M${cursor.x},${cursor.y + 9}V${strip.rulerY}`} />
          <circle cx={cursor.x} cy={cursor.y} r={9} />
        </g>
      )}
    </svg>
  )
}

function Band({ strip }: { readonly strip: BeadStrip }) {
  const length = strip.right - strip.left
  return strip.band.map(({ y, height }) => (
    <g key={y}>
      <rect x={strip.left} y={y} width={length} height={height} className="fill-band" />
      <path d={`M${strip.left},${y}h${length}M${strip.left},${y + height}h${length}`} className="stroke-accept" strokeWidth={0.75} strokeDasharray="4 3" />
    </g>
  ))
}

function Restarts({ strip }: { readonly strip: BeadStrip }) {
  const reach = strip.axisY - (strip.labelY === null ? 2 : strip.labelY + 8)
  return strip.restarts.map(({ x }) => (
    <g key={x} className="stroke-ink">
      <path d={`M${x},${strip.axisY - reach}V${strip.axisY + reach}`} strokeWidth={1.25} strokeDasharray="4 3" />
      <path d={`M${x - 4},${strip.axisY - reach}h8l-4,6z`} className="fill-ink" stroke="none" />
    </g>
  ))
}

function Readings({ strip, weight }: { readonly strip: BeadStrip; readonly weight: Weight }) {
  const alone = strip.toes.length === 0
  return strip.readings.map((reading) => (
    <g key={reading.x}>
      {alone && <path d={`M${reading.x},${reading.yA}V${reading.yB}`} className="stroke-ink" strokeWidth={weight.line} />}
      {[reading.yA, reading.yB].map((y) =>
        reading.inBand === false ? (
          <rect key={y} x={reading.x - weight.point - 1} y={y - weight.point - 1} width={2 * weight.point + 2} height={2 * weight.point + 2} className="fill-plate stroke-reject" strokeWidth={2} />
        ) : (
          <circle key={y} cx={reading.x} cy={y} r={weight.point} className="fill-ink" />
        ),
      )}
      {reading.label && strip.labelY !== null && (
        <text x={reading.x} y={strip.labelY} textAnchor="middle" className={`figures fill-ink text-[14px] ${reading.inBand === false ? 'underline' : ''}`}>
          {reading.label}
        </text>
      )}
    </g>
  ))
}

function Rejected({ strip }: { readonly strip: BeadStrip }) {
  return strip.rejected.map(({ x1, x2, y, number }) => {
    const from = Math.min(x1, (x1 + x2) / 2 - 9)
    const to = Math.max(x2, (x1 + x2) / 2 + 9)
    return (
      <g key={number}>
        <path d={`M${from},${y - 6}v6H${to}v-6`} fill="none" className="stroke-reject" strokeWidth={2.5} />
        <rect x={(from + to) / 2 - 7} y={y - 8} width={14} height={16} className="fill-plate stroke-reject" strokeWidth={2} />
        <text x={(from + to) / 2} y={y + 4.5} textAnchor="middle" className="figures fill-ink text-[13px]">
          {number}
        </text>
      </g>
    )
  })
}

function Ruler({ strip }: { readonly strip: BeadStrip }) {
  return (
    <g>
      <path
        d={`M${strip.left},${strip.rulerY}H${strip.right}${strip.ruler.map((tick) => `M${tick.x},${strip.rulerY}v${tick.long ? 8 : 4}`).join('')}`}
        fill="none"
        className="stroke-ink-2"
        strokeWidth={1}
      />
      {strip.ruler.map((tick) => (
        tick.label && (
          <text key={tick.x} x={tick.x} y={strip.rulerY + 23} textAnchor={tick.anchor} className="figures fill-ink-2 text-[14px]">
            {tick.label}
          </text>
        )
      ))}
    </g>
  )
}

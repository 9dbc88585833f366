import type { MarkShape } from '@/lib/reports/bead-marks'

/** An indication's shape in ink, with a halo of the ground so that it is seen across a line. */
export function MarkPath({ mark }: { readonly mark: MarkShape }) {
  return (
    <g strokeLinejoin="round" strokeLinecap="round">
      {mark.stroked && <path d={mark.stroked} fill="none" className="stroke-plate" strokeWidth={5.5} />}
      {mark.filled && <path d={mark.filled} className="fill-plate stroke-plate" strokeWidth={3} />}
      {mark.stroked && <path d={mark.stroked} fill="none" className="stroke-ink" strokeWidth={2} />}
      {mark.filled && <path d={mark.filled} className="fill-ink" />}
    </g>
  )
}

import { markShape } from '@/lib/reports/bead-marks'
import type { IndicationKind } from '@/lib/scoring/types'
import { MarkPath } from './mark-path'

/** The sign of a kind of indication, as the strip draws it: for keys, buttons and lists. The word stands beside it. */
export function IndicationGlyph({ kind }: { readonly kind: IndicationKind }) {
  const place = { from: 6, to: 26, line: () => 11, outward: -1 } as const
  return (
    <svg viewBox="0 0 32 22" aria-hidden="true" className="h-[22px] w-8 shrink-0">
      {(kind === 'undercut' || kind === 'overlap') && <path d="M1 11h30" className="stroke-ink" strokeWidth={2} />}
      <MarkPath mark={markShape(kind, place)} />
    </svg>
  )
}

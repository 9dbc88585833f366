import Link from 'next/link'
import { drawBeadStrip, type BeadStripInput } from '@/lib/reports/bead-strip'
import { VerdictMark, type VerdictKind } from '../ui/verdict-mark'
import { BeadStripDrawing } from './bead-strip-drawing'

export type StripRow = {
  readonly key: string
  /** 'No. 4' */
  readonly label: string
  readonly strip: BeadStripInput
  /** The coupon's verdict with its word. */
  readonly verdict: { readonly kind: VerdictKind; readonly word: string }
  /** Where the coupon's own page is; no link on paper. */
  readonly href?: string
}

type BeadStripColumnProps = {
  /** 'Every third coupon, oldest first' */
  readonly title: string
  readonly rows: readonly StripRow[]
  readonly titleHidden?: boolean
}

/** A student's story in one look: one strip a line, in the order given (oldest first), each with its verdict. */
export function BeadStripColumn({ title, rows, titleHidden = false }: BeadStripColumnProps) {
  const drawn = rows.map((row) => ({ ...row, drawing: drawBeadStrip(row.strip, 'row') }))
  const scales = [...new Set(drawn.map((row) => row.drawing.words.scale))]
  return (
    <figure>
      <figcaption className="mb-1">
        <span className={titleHidden ? 'sr-only' : 'block font-head text-xl leading-tight font-semibold'}>{title}</span>
        {drawn[0] && (
          <span className="block text-base text-ink-2">
            {drawn[0].drawing.words.ends} {scales.length === 1 && scales[0]}
          </span>
        )}
      </figcaption>
      <ol className="divide-y divide-line border-b border-line">
        {drawn.map(({ key, label, drawing, verdict, href }) => (
          <li key={key} className="flex items-center gap-3 py-1">
            <span className="w-14 shrink-0 leading-tight font-bold">
              {href ? (
                <Link href={href} className="ring-inside inline-flex min-h-12 items-center">
                  {label}
                </Link>
              ) : (
                label
              )}
            </span>
            <span className="min-w-0 flex-1">
              <BeadStripDrawing strip={drawing} label={drawing.words.description} className="" />
              {scales.length > 1 && <span className="block text-sm text-ink-2">{drawing.words.scale}</span>}
            </span>
            <span className="flex w-28 shrink-0 items-center gap-2 leading-tight">
              <VerdictMark verdict={verdict.kind} size="small" />
              {verdict.word}
            </span>
          </li>
        ))}
      </ol>
    </figure>
  )
}

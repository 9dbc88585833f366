import { drawBeadStrip, type BeadStripInput } from '@/lib/reports/bead-strip'
import { BeadStripDrawing } from './bead-strip-drawing'
import { BeadStripKey } from './bead-strip-key'

type BeadStripProps = BeadStripInput & {
  /** Leaves the heading out where the page has its own. */
  readonly titleHidden?: boolean
}

/**
 * The weld drawn along its length: measured toe lines on the allowed band, indications, restarts, what was rejected and where, the rule in
 * the reader's units, and the note that width is drawn larger than length. Drawn twice, for narrow and for wide places, so that its
 * text keeps its size; only one is ever shown.
 */
export function BeadStrip({ titleHidden = false, ...input }: BeadStripProps) {
  const narrow = drawBeadStrip(input, 'narrow')
  const wide = drawBeadStrip(input, 'wide')
  const { words } = wide
  return (
    <figure className="@container">
      <figcaption>
        <span className={titleHidden ? 'sr-only' : 'eyebrow block'}>{words.title}</span>
        <span className="block text-base text-ink-2">
          {words.ends} {words.scale}
        </span>
        {words.noWidths && <span className="block font-bold">{words.noWidths}</span>}
      </figcaption>
      <BeadStripDrawing strip={narrow} label={words.description} className="mt-2 @xl:hidden" />
      <BeadStripDrawing strip={wide} label={words.description} className="mt-2 hidden max-w-4xl @xl:block" />
      <BeadStripKey words={words} />
    </figure>
  )
}
